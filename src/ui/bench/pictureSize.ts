/** The largest picture of this shape that fits, in whole CSS pixels. */
export const fitPicture = (
  aspect: number,
  width: number,
  height: number,
): { readonly width: number; readonly height: number } =>
  width / height > aspect
    ? { width: Math.max(1, Math.round(height * aspect)), height: Math.max(1, height) }
    : { width: Math.max(1, width), height: Math.max(1, Math.round(width / aspect)) }
