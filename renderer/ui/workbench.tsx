import { PanelLeft, PanelRight } from 'lucide-react';
import type { CSSProperties, ReactNode } from 'react';
import { foldPanel, type Panel, panelLimits, sizePanel, useView } from '../stores/index.ts';
import { uiWords } from '../texts/index.ts';
import { Splitter } from './splitter.tsx';

type WorkbenchProps = {
  readonly room: string;
  /** The room's name as the page's heading, for those who hear the page. */
  readonly title: string;
  readonly left: ReactNode;
  readonly leftLabel: string;
  readonly children: ReactNode;
  readonly right: ReactNode;
  readonly rightLabel: string;
  readonly bottom?: ReactNode;
  readonly bottomLabel?: string;
};

/** The frame of a room: list, middle, details and what lies below; side panels can be sized and folded. */
export function Workbench(props: WorkbenchProps) {
  const { room, title, left, leftLabel, children, right, rightLabel, bottom, bottomLabel = '' } = props;
  const panels = useView((state) => state.panels);
  const style = {
    '--left': panels.left.folded ? '0px' : `min(${panels.left.sizePx}px, 26vw)`,
    '--right': panels.right.folded ? '0px' : `min(${panels.right.sizePx}px, 26vw)`,
    '--bottom': panels.bottom.folded ? '0px' : `min(${panels.bottom.sizePx}px, 46vh)`,
  } as CSSProperties;
  return (
    <div className={`workbench workbench-${room}${bottom === undefined ? '' : ' workbench-with-bottom'}`} style={style}>
      <SidePanel panel="left" label={leftLabel} size={uiWords.workbench.width} grows="right">
        {left}
      </SidePanel>
      <main className="middle">
        <h1 className="only-spoken">{title}</h1>
        {children}
      </main>
      <SidePanel panel="right" label={rightLabel} size={uiWords.workbench.width} grows="left">
        {right}
      </SidePanel>
      {bottom !== undefined && (
        <SidePanel panel="bottom" label={bottomLabel} size={uiWords.workbench.height} grows="up">
          {bottom}
        </SidePanel>
      )}
    </div>
  );
}

type SidePanelProps = {
  readonly panel: Panel;
  readonly label: string;
  readonly size: 'Width' | 'Height';
  readonly grows: 'right' | 'left' | 'up';
  readonly children: ReactNode;
};

/** A panel with the splitter that sizes it. The splitter stays where the panel is folded, and brings it back. */
function SidePanel({ panel, label, size, grows, children }: SidePanelProps) {
  const { sizePx, folded } = useView((state) => state.panels[panel]);
  const splitterLabel = uiWords.workbench.sizeOf(size, label.toLowerCase());
  const content = (
    // A panel that scrolls can be reached and scrolled from the keyboard even where it holds nothing but text.
    <div
      id={`panel-${panel}`}
      className={`panel panel-${panel}`}
      hidden={folded}
      tabIndex={panel === 'right' ? 0 : undefined}
    >
      {children}
    </div>
  );
  const split = (
    <div className={`split split-${panel}`}>
      <Splitter
        label={splitterLabel}
        grows={grows}
        sizePx={sizePx}
        limits={panelLimits(panel)}
        folded={folded}
        controls={`panel-${panel}`}
        onSize={(wanted) => sizePanel(panel, wanted)}
        onFold={(fold) => foldPanel(panel, fold)}
      />
      {folded && (
        <button
          type="button"
          className="unfold"
          aria-label={uiWords.workbench.unfold(label.toLowerCase())}
          title={uiWords.workbench.unfoldTip}
          onClick={() => foldPanel(panel, false)}
        >
          {panel === 'right' ? <PanelRight size={15} aria-hidden="true" /> : <PanelLeft size={15} aria-hidden="true" />}
        </button>
      )}
    </div>
  );
  return (
    <aside className="side" aria-label={label}>
      {panel === 'left' ? content : split}
      {panel === 'left' ? split : content}
    </aside>
  );
}
