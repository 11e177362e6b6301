/** A change that waits to be kept or left, in plain sentences, over the picture. */
export const ProposalBar = () => null
