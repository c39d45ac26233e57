/** A place proposed for the piano. */
export interface ProposedPlace {
  readonly alongMm: number;
  readonly acrossMm: number;
  readonly tailDeg?: number | undefined;
}
