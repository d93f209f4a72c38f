export { Button, type ButtonLook } from './button.tsx';
export { Choice, type ChoiceOption, Tick } from './choice.tsx';
export { DraftInput, type DraftInputProps } from './draft-input.tsx';
export { IssueList } from './issue-list.tsx';
export { QuantityInput, type QuantityKind, readTyped, tidyFigure } from './quantity-input.tsx';
export { Empty, Field, Section } from './section.tsx';
export { VirtualList } from './virtual-list.tsx';
export { rowForKey, rowForText, rowsInView, scrollToShow } from './virtual-rows.ts';
export { Workbench } from './workbench.tsx';
