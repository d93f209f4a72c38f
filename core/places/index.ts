export { type Address, readAddress, readStreetName, type StreetName } from './address.ts';
export { type AddressAnswer, findAddress, type NotPlacedCode, type PlaceConfidence } from './find.ts';
export { indexStreets, type StreetIndex } from './finder.ts';
export { OFFSET_M } from './interpolate.ts';
export { readKeptStreets, writeStreets } from './street-file.ts';
export { type NumberRange, readStreets, type StreetFile, type StreetPiece } from './streets.ts';
