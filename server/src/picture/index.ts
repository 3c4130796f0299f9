/** The picture of the wiring, for lsp/ and cli/. */
export { drawPicture } from './draw';
export type { Mark, PictureModel } from './model';
export { pictureOf } from './picture-of';
