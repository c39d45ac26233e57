/** A constant of a material: how large, how sure (half-width of what is usual, same unit), and from where. */
export interface MaterialProperty<Value extends number = number> {
  readonly value: Value;
  readonly uncertainty: Value;
  /** A key of the bibliography. */
  readonly source: string;
}
