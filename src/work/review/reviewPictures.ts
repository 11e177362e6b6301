import type { Grade } from '../../core/colour/grade.ts'
import type { MatrixName, Planes } from '../../core/picture/planes.ts'
import type { Still } from '../../core/picture/still.ts'
import type { Kernel } from '../../kernel/kernel.ts'
import type { PicturesRequest } from '../framePictures.ts'
import { makeStill } from '../makeStill.ts'

/** A frame to be shown to a reviewer, graded as it is and by each of its alternates. */
export type ReviewRequest = PicturesRequest & { readonly alternates: readonly Grade[] }

/** Pictures as data: addresses. */
export type ReviewPictures = {
  readonly before: string
  readonly after: string
  readonly alternates: readonly string[]
}

/** How a still becomes an address of a page. */
export type ToAddress = (still: Still, matrix: MatrixName) => Promise<string>

/** Pictures of a frame for a review pack: after the base, and as they would be delivered. */
export const reviewPictures = async (
  planes: Planes,
  kernel: Kernel,
  { coding, grade, framing, alternates, width, height }: ReviewRequest,
  toAddress: ToAddress,
): Promise<ReviewPictures> => {
  const { matrix } = coding
  const graded = (by: Grade): Promise<string> => {
    const { y, cb, cr } = kernel.deliverCodes({ planes, coding, grade: by, framing }, matrix)
    const size = { width: planes.width, height: planes.height }
    const delivered: Planes = { ...size, layout: '444', depth: 10, samples: [y, cb, cr] }
    return toAddress(makeStill(delivered, { matrix, range: 'narrow' }, width, height), matrix)
  }
  const others: string[] = []
  for (const each of alternates) others.push(await graded(each))
  return {
    before: await toAddress(makeStill(planes, coding, width, height), matrix),
    after: await graded(grade),
    alternates: others,
  }
}
