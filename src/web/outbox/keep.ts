import type { Parcel } from './parcel.ts';

/** Where parcels are kept until acknowledged. Each has an entry of its own, so that two windows never write over each other's. */
export interface Keep {
  /** False when the device would not take it: then it lives only as long as the page. */
  put(parcel: Parcel): boolean;
  drop(sendId: string): void;
  all(): readonly Parcel[];
}

const PREFIX = 'wrestplank.outbox.';

/** Keeps parcels in the browser's storage, where they outlive a reload, a crash and a flat battery. */
export function browserKeep(storage: Storage): Keep {
  return {
    put(parcel) {
      try {
        storage.setItem(PREFIX + parcel.sendId, JSON.stringify(parcel));
        return true;
      } catch {
        return false;
      }
    },
    drop(sendId) {
      storage.removeItem(PREFIX + sendId);
    },
    all() {
      const names = Array.from({ length: storage.length }, (_, index) => storage.key(index) ?? '').filter((name) => name.startsWith(PREFIX));
      return names.flatMap((name) => {
        const parcel = readParcel(storage.getItem(name));
        return parcel === undefined ? [] : [parcel];
      });
    },
  };
}

/** A kept text that no longer reads as a parcel stays where it is; it is never thrown away unread. */
function readParcel(text: string | null): Parcel | undefined {
  try {
    const parcel = JSON.parse(text ?? '') as Parcel;
    return typeof parcel.sendId === 'string' && Array.isArray(parcel.entries) ? parcel : undefined;
  } catch {
    return undefined;
  }
}
