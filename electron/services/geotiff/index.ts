export { type PixelFrame, type RasterFrame, rasterFrame } from './raster-frame.ts';
