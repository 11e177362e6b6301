const WHY: Readonly<Record<string, string>> = {
  EACCES: 'that is not allowed; check who may write there',
  EEXIST: 'it is a file, where a folder is wanted; name another',
  EISDIR: 'it is a folder; name a file in it',
  ENOENT: 'its folder is not there; make it first',
  ENOSPC: 'the disk is full',
  ENOTDIR: 'what should be a folder is none; name another place',
  EPERM: 'that is not allowed; check who may write there',
  EROFS: 'the disk cannot be written to',
}

/** Why the disk refused, in plain words; undefined where the error is none of the disk's. */
export const diskWords = (error: unknown): string | undefined =>
  error instanceof Error && 'code' in error ? WHY[String(error.code)] : undefined
