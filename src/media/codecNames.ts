/** Identifiers of ISO media files, AVI and Matroska for codecs no browser decodes. */
const NAMES: Readonly<Record<string, string>> = {
  dvcp: 'DV',
  dvpp: 'DV',
  dvc: 'DV',
  dvsd: 'DV',
  dv25: 'DV',
  dv50: 'DV',
  dvhd: 'DV',
  dvh1: 'DV',
  dv5p: 'DV',
  dv5n: 'DV',
  apcn: 'ProRes',
  apch: 'ProRes',
  apcs: 'ProRes',
  apco: 'ProRes',
  ap4h: 'ProRes',
  ap4x: 'ProRes',
  mjpa: 'Motion JPEG',
  mjpb: 'Motion JPEG',
  mjpg: 'Motion JPEG',
  jpeg: 'Motion JPEG',
  v_mjpeg: 'Motion JPEG',
  mjp2: 'JPEG 2000',
  avdn: 'VC-3',
  avdh: 'VC-3',
  ffv1: 'FFV1',
  v_ffv1: 'FFV1',
  v_prores: 'ProRes',
  v_mpeg1: 'MPEG-1',
  v_mpeg2: 'MPEG-2',
  mpg1: 'MPEG-1',
  mpg2: 'MPEG-2',
  m2v1: 'MPEG-2',
  xdv2: 'MPEG-2',
  mx5p: 'MPEG-2',
  mx3p: 'MPEG-2',
  mp4v: 'MPEG-4 Visual',
  divx: 'MPEG-4 Visual',
  xvid: 'MPEG-4 Visual',
  dx50: 'MPEG-4 Visual',
  fmp4: 'MPEG-4 Visual',
  h264: 'H.264',
  x264: 'H.264',
  avc1: 'H.264',
  hevc: 'HEVC',
  v210: 'uncompressed 4:2:2',
  uyvy: 'uncompressed 4:2:2',
  yuy2: 'uncompressed 4:2:2',
  '2vuy': 'uncompressed 4:2:2',
}

/**
 * A codec's identifier in words; the identifier itself where it is not known here. Which
 * identifier stands for what is common practice of the file formats, partly from memory.
 */
export const codecName = (identifier: string): string => {
  const plain = identifier.trim()
  return NAMES[plain.toLowerCase()] ?? NAMES[plain.split('/')[0]?.toLowerCase() ?? ''] ?? plain
}
