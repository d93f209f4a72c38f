import type { ReactNode } from 'react';
import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import { type Room, showView, useView } from '../stores/index.ts';

/** One of several views that share a place. */
export type View = { readonly id: string; readonly title: string; readonly show: () => ReactNode };

type ViewsProps = {
  /** Whose views they are: a room shows the one that it showed last. */
  readonly room: Room;
  readonly label: string;
  readonly views: readonly View[];
  /** What stands beside the titles. */
  readonly aside?: ReactNode;
};

/** Views that share a place, with their titles above it. Each keeps nothing of its own while another one is shown. */
export function Views({ room, label, views, aside }: ViewsProps) {
  const wanted = useView((state) => state.views[room]);
  const chosen = views.find((each) => each.id === wanted)?.id ?? views[0]?.id ?? '';
  return (
    <Tabs className="views" selectedKey={chosen} onSelectionChange={(key) => showView(room, String(key))}>
      <div className="views-head">
        <TabList className="views-titles" aria-label={label}>
          {views.map(({ id, title }) => (
            <Tab key={id} id={id} className="views-title">
              {title}
            </Tab>
          ))}
        </TabList>
        {aside}
      </div>
      {views.map(({ id, show }) => (
        <TabPanel key={id} id={id} className="views-panel">
          {show()}
        </TabPanel>
      ))}
    </Tabs>
  );
}
