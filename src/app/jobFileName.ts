import type { Job } from '../core/job/job.ts'

/** A file name from a title: what every file system takes. */
const fileNameFrom = (title: string): string =>
  title
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[^\w.-]+/gu, '-')
    .replace(/^-+|-+$/gu, '') || 'job'

/** What the file of a job is called. */
export const jobFileName = ({ info }: Job): string =>
  `${fileNameFrom(info.job.title)}.reelwright.json`
