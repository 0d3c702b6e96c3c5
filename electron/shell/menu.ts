import { Menu, type ContextMenuParams, type MenuItemConstructorOptions } from 'electron';

/**
 * The application's menu: editing and zooming by keyboard need its roles, and nothing else of a
 * browser's menu belongs here. On macOS the first menu becomes that of the application, whatever it
 * holds, and hide, about and quit stand nowhere else.
 */
export function setMenu(platform: NodeJS.Platform): void {
  const ofApplication: MenuItemConstructorOptions[] =
    platform === 'darwin' ? [{ role: 'appMenu' }] : [];
  Menu.setApplicationMenu(
    Menu.buildFromTemplate([
      ...ofApplication,
      { role: 'fileMenu' },
      { role: 'editMenu' },
      { label: 'View', submenu: ZOOM },
      { role: 'windowMenu' },
    ]),
  );
}

const ZOOM: MenuItemConstructorOptions[] = [
  { role: 'resetZoom' },
  { role: 'zoomIn' },
  // The plus without Shift, where it shares a key with the equals sign.
  {
    role: 'zoomIn',
    accelerator: 'CommandOrControl+=',
    visible: false,
    acceleratorWorksWhenHidden: true,
  },
  { role: 'zoomOut' },
  { type: 'separator' },
  { role: 'togglefullscreen' },
];

/** Cut, copy and paste where they apply; Electron itself shows no menu at the pointer. */
export function showContextMenu(at: ContextMenuParams): void {
  const { canCut, canCopy, canPaste, canSelectAll } = at.editFlags;
  if (at.isEditable) {
    popUp([
      { role: 'cut', enabled: canCut },
      { role: 'copy', enabled: canCopy },
      { role: 'paste', enabled: canPaste },
      { type: 'separator' },
      { role: 'selectAll', enabled: canSelectAll },
    ]);
  } else if (at.selectionText.trim() !== '') {
    popUp([{ role: 'copy' }]);
  }
}

const popUp = (items: MenuItemConstructorOptions[]): void => Menu.buildFromTemplate(items).popup();
