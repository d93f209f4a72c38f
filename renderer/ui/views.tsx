import type { ReactNode } from 'react';
import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import { ROOM_VIEWS, type RoomWithViews, showView, useView, type ViewId } from '../stores/index.ts';

/** What each view of a room shows. */
export type ShownViews<Name extends RoomWithViews> = Readonly<Record<ViewId<Name>, () => ReactNode>>;

type ViewsProps<Name extends RoomWithViews> = {
  /** Whose views they are: a room shows the one that it showed last. */
  readonly room: Name;
  readonly label: string;
  readonly show: ShownViews<Name>;
  /** What stands beside the titles. */
  readonly aside?: ReactNode;
};

/** Views that share a place, with their titles above it. Each keeps nothing of its own while another one is shown. */
export function Views<Name extends RoomWithViews>({ room, label, show, aside }: ViewsProps<Name>) {
  const wanted = useView((state) => state.views[room]);
  const views: readonly { readonly id: ViewId<Name>; readonly title: string }[] = ROOM_VIEWS[room];
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
      {views.map(({ id }) => (
        <TabPanel key={id} id={id} className="views-panel">
          {show[id]()}
        </TabPanel>
      ))}
    </Tabs>
  );
}
