declare const unit: unique symbol

/** A number that carries its unit in its type, so that look-alike units cannot be mixed. */
export type Branded<Base, Unit extends string> = Base & { readonly [unit]: Unit }
