import type { Change, LogEvent, ShopKind } from '#workshop';

/** Which events of a chain are asked for; nothing stated: the newest hundred. */
export interface EventsAsked {
  /** Only events before this number, and from this number on. */
  readonly before?: number | undefined;
  readonly since?: number | undefined;
  readonly limit?: number | undefined;
  /** Only events that change something of this kind. */
  readonly what?: Change['entity'] | undefined;
  /** Only events that change or rest on this card: `work/<id>`, `session/<id>`. */
  readonly about?: string | undefined;
  /** Only events that this is true of. */
  readonly matches?: ((event: LogEvent) => boolean) | undefined;
}

/** Which cards of the shop are asked for; nothing stated: all of them. */
export interface CardsAsked {
  readonly kinds?: readonly ShopKind[] | undefined;
  /** Cards that name a piano come only for this one. */
  readonly pianoId?: string | undefined;
  /** Only cards that name this person. */
  readonly person?: string | undefined;
  /** Only what is not yet done, answered, ended, received or brought back. */
  readonly isOpen?: boolean | undefined;
}
