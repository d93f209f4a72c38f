import { Menu, type MenuItemConstructorOptions } from 'electron';

/**
 * A small native menu. Undo and redo are the page's own commands, so they are not here: the system's would change the text of a
 * field behind the program's back.
 */
export function setMenu(platform: string = process.platform): void {
  const isMac = platform === 'darwin';
  const template: MenuItemConstructorOptions[] = [
    ...(isMac ? [{ role: 'appMenu' } as const] : []),
    { label: '&File', submenu: [isMac ? { role: 'close' } : { role: 'quit' }] },
    {
      label: '&Edit',
      submenu: [{ role: 'cut' }, { role: 'copy' }, { role: 'paste' }, { role: 'selectAll' }],
    },
    {
      label: '&View',
      submenu: [
        { role: 'reload' },
        { type: 'separator' },
        { role: 'resetZoom' },
        { role: 'zoomIn' },
        { role: 'zoomOut' },
        { type: 'separator' },
        { role: 'togglefullscreen' },
      ],
    },
  ];
  Menu.setApplicationMenu(Menu.buildFromTemplate(template));
}
