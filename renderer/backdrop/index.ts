export { BackdropControls } from './backdrop-controls.tsx';
export { PictureDesk } from './picture-desk.tsx';
