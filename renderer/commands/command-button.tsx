import type { ReactNode } from 'react';
import { Button, type ButtonLook } from '../ui/index.ts';
import { IS_MAC, keyWords } from './command.ts';
import { useCommand } from './use-command.ts';

type CommandButtonProps = {
  /** Of the command. */
  readonly id: string;
  readonly look?: ButtonLook;
  /** A picture, or words that are shorter than the command's own; left out: its own. */
  readonly children?: ReactNode;
  /** True where the button shows a picture alone and is spoken of by the command's words. */
  readonly bare?: boolean;
  /** More than the command's words in the tip. */
  readonly tip?: string;
};

/** A button for a command: its words, its key and why it cannot be done come from the registry. */
export function CommandButton({ id, look = 'plain', children, bare = false, tip }: CommandButtonProps) {
  const { command, title, whyNot, isOn } = useCommand(id);
  const [key] = command.keys;
  const words = tip ?? title;
  return (
    <Button
      look={look}
      tip={key === undefined ? words : `${words} (${keyWords(key, IS_MAC)})`}
      whyNot={whyNot}
      onPress={command.run}
      {...(bare ? { label: title } : {})}
      {...(isOn === null ? {} : { pressed: isOn })}
    >
      {children ?? title}
    </Button>
  );
}
