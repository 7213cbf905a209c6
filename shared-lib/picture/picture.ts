/** One plane of a picture, row by row from the top left: 0 black, 255 white, coded as cameras and screens do (sRGB). */
export interface GreyPicture {
  width: number;
  height: number;
  /** `width` × `height` values. */
  grey: Uint8Array;
}
