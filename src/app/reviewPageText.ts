import script from '../../.cache/review/review.js?raw'
import type { ReviewPage } from '../core/agreement/pack/packHtml.ts'
import style from '../review/review.css?raw'

/** The page of a review pack, as the build made it. */
export const REVIEW_PAGE: ReviewPage = { script, style }
