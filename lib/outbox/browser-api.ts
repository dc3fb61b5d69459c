import { browserEnvironment } from './browser-environment';
import { browserOutbox } from './browser-outbox';
import { createSend, type Send } from './fetch-json';

export type Api = {
  send: Send;
  /** Who is measuring on this device from now on; named in the headers of what is sent. */
  setPerson: (personId: string | null) => void;
};

let ofThisTab: Api | null = null;

/** The API client of this tab. Call it in a page, not on the server. */
export function browserApi(): Api {
  ofThisTab ??= create();
  return ofThisTab;
}

function create(): Api {
  let person: string | null = null;
  let device: Promise<string> | null = null;
  return {
    send: createSend(browserEnvironment(), {
      deviceId: () => (device ??= browserOutbox().deviceId()),
      personId: () => person,
    }),
    setPerson(personId) {
      person = personId;
    },
  };
}
