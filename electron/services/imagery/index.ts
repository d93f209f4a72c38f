export { createImagery, type Imagery, type ImageryOptions } from './imagery.ts';
export { type PictureAnswer, pictureAnswer, sameText, serveTile } from './serve.ts';
