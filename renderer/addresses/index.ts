export { AddressDialog } from './address-dialog.tsx';
