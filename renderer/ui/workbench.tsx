import { PanelLeft, PanelRight } from 'lucide-react';
import type { CSSProperties, ReactNode } from 'react';
import { foldPanel, type Panel, panelLimits, sizePanel, useView } from '../stores/index.ts';
import { Splitter } from './splitter.tsx';

type WorkbenchProps = {
  readonly room: string;
  readonly left: ReactNode;
  readonly leftLabel: string;
  readonly children: ReactNode;
  readonly right: ReactNode;
  readonly rightLabel: string;
  readonly bottom?: ReactNode;
  readonly bottomLabel?: string;
};

/** The frame of a room: list, middle, details and what lies below; side panels can be sized and folded. */
export function Workbench({ room, left, leftLabel, children, right, rightLabel, bottom, bottomLabel }: WorkbenchProps) {
  const panels = useView((state) => state.panels);
  const style = {
    '--left': panels.left.folded ? '0px' : `min(${panels.left.sizePx}px, 26vw)`,
    '--right': panels.right.folded ? '0px' : `min(${panels.right.sizePx}px, 26vw)`,
    '--bottom': panels.bottom.folded ? '0px' : `min(${panels.bottom.sizePx}px, 46vh)`,
  } as CSSProperties;
  return (
    <div className={`workbench workbench-${room}${bottom === undefined ? '' : ' workbench-with-bottom'}`} style={style}>
      <SidePanel panel="left" label={leftLabel}>
        {left}
      </SidePanel>
      <PanelSplitter panel="left" label={`Width of the ${leftLabel.toLowerCase()}`} grows="right" />
      <main className="middle">{children}</main>
      <PanelSplitter panel="right" label={`Width of the ${rightLabel.toLowerCase()}`} grows="left" />
      <SidePanel panel="right" label={rightLabel}>
        {right}
      </SidePanel>
      {bottom !== undefined && (
        <>
          <PanelSplitter panel="bottom" label={`Height of the ${bottomLabel ?? ''}`} grows="up" />
          <SidePanel panel="bottom" label={bottomLabel ?? ''}>
            {bottom}
          </SidePanel>
        </>
      )}
    </div>
  );
}

type SidePanelProps = { readonly panel: Panel; readonly label: string; readonly children: ReactNode };

function SidePanel({ panel, label, children }: SidePanelProps) {
  const folded = useView((state) => state.panels[panel].folded);
  return (
    <aside id={`panel-${panel}`} className={`panel panel-${panel}`} aria-label={label} hidden={folded}>
      {children}
    </aside>
  );
}

type PanelSplitterProps = { readonly panel: Panel; readonly label: string; readonly grows: 'right' | 'left' | 'up' };

function PanelSplitter({ panel, label, grows }: PanelSplitterProps) {
  const state = useView((view) => view.panels[panel]);
  return (
    <div className={`split split-${panel}`}>
      <Splitter
        label={label}
        grows={grows}
        sizePx={state.sizePx}
        limits={panelLimits(panel)}
        folded={state.folded}
        controls={`panel-${panel}`}
        onSize={(sizePx) => sizePanel(panel, sizePx)}
        onFold={(folded) => foldPanel(panel, folded)}
      />
      {state.folded && (
        <button
          type="button"
          className="unfold"
          aria-label={`Unfold: ${label}`}
          title="Unfold"
          onClick={() => foldPanel(panel, false)}
        >
          {panel === 'right' ? <PanelRight size={15} aria-hidden="true" /> : <PanelLeft size={15} aria-hidden="true" />}
        </button>
      )}
    </div>
  );
}
