/**
 * Source texts that run in Chromium. A preload script runs in a world of its own that shares only the page's DOM, so what
 * contextBridge exposes crosses by events with text in them: values are copied, functions and promises are stood in for by
 * proxies on the other side.
 */

export const PRELOAD_WORLD = 'preload';
export const TO_MAIN = '__doubleToMain';
export const FROM_MAIN = '__doubleFromMain';
const EXPOSE = '__double-expose';

/** A codec and caller; the same text runs in both worlds. `me` and `them` name the events. */
const LINK = `
function makeLink(me, them) {
  const kept = new Map();
  const promises = new Map();
  let next = 1;
  const keep = (value) => { const id = me + next++; kept.set(id, value); return id; };
  const deliver = (message) => {
    let answer;
    const hear = (event) => { answer = event.detail; };
    document.addEventListener('__double-answer-' + message.n, hear, { once: true });
    document.dispatchEvent(new CustomEvent('__double-to-' + them, { detail: JSON.stringify(message) }));
    return answer === undefined ? undefined : JSON.parse(answer);
  };
  let number = 0;
  const send = (message) => deliver({ ...message, n: me + (number += 1) });
  const encode = (value, depth = 0) => {
    if (depth > 1000) throw new Error('an object is nested too deep to cross');
    if (value === undefined) return { t: 'undefined' };
    if (value === null || ['string', 'boolean'].includes(typeof value)) return { t: 'value', value };
    if (typeof value === 'number') return { t: 'number', value: String(value) };
    if (typeof value === 'function') return { t: 'function', id: keep(value) };
    if (typeof value !== 'object') throw new Error('a ' + typeof value + ' cannot cross');
    if (value instanceof Promise) {
      const id = keep(value);
      value.then(
        (settled) => send({ kind: 'settle', id, ok: true, value: encode(settled) }),
        (error) => send({ kind: 'settle', id, ok: false, value: encode(String(error && error.message || error)) }),
      );
      return { t: 'promise', id };
    }
    if (Array.isArray(value)) return { t: 'array', items: value.map((item) => encode(item, depth + 1)) };
    return { t: 'object', entries: Object.entries(value).map(([key, item]) => [key, encode(item, depth + 1)]) };
  };
  const decode = (coded) => {
    switch (coded.t) {
      case 'undefined': return undefined;
      case 'value': return coded.value;
      case 'number': return Number(coded.value);
      case 'array': return coded.items.map(decode);
      case 'object': return Object.fromEntries(coded.entries.map(([key, item]) => [key, decode(item)]));
      case 'promise': return new Promise((resolve, reject) => promises.set(coded.id, { resolve, reject }));
      case 'function': return (...values) => {
        const answer = send({ kind: 'call', id: coded.id, values: values.map((item) => encode(item)) });
        if (answer === undefined) throw new Error('the other world did not answer');
        if (!answer.ok) throw new Error(answer.message);
        return decode(answer.value);
      };
    }
  };
  document.addEventListener('__double-to-' + me, (event) => {
    const message = JSON.parse(event.detail);
    let answer = { ok: true, value: { t: 'undefined' } };
    try {
      if (message.kind === 'call') {
        const values = message.values.map(decode);
        answer = { ok: true, value: encode(kept.get(message.id)(...values)) };
      } else {
        const promise = promises.get(message.id);
        promises.delete(message.id);
        promise?.[message.ok ? 'resolve' : 'reject'](message.ok ? decode(message.value) : new Error(decode(message.value)));
      }
    } catch (error) {
      answer = { ok: false, message: String(error && error.message || error) };
    }
    document.dispatchEvent(new CustomEvent('__double-answer-' + message.n, { detail: JSON.stringify(answer) }));
  });
  return { encode, decode };
}`;

/** Runs in the page's own world before its scripts: puts there what the preload script exposes, frozen as Electron does. */
export const PAGE_SOURCE = `(() => {
  if (window !== window.top) return;
  ${LINK}
  const link = makeLink('page', 'preload');
  const freeze = (value) => {
    if (value !== null && typeof value === 'object') for (const item of Object.values(value)) freeze(item);
    return Object.freeze(value);
  };
  document.addEventListener('${EXPOSE}', (event) => {
    const { key, value } = JSON.parse(event.detail);
    Object.defineProperty(window, key, { value: freeze(link.decode(value)), enumerable: true });
  });
})();`;

/** Wraps a preload script for its world: it may load 'electron' alone, and of that only what a sandboxed preload needs here. */
export function preloadSource(script: string): string {
  return `(() => {
  if (window !== window.top) return;
  ${LINK}
  const link = makeLink('preload', 'page');
  const strict = (name, object) => new Proxy(object, {
    get: (target, key) => {
      if (typeof key === 'symbol' || key in target || ['then', 'default', '__esModule'].includes(key)) return target[key];
      throw new Error('the double has no ' + name + '.' + key);
    },
  });
  const toMain = (message) => window.${TO_MAIN}(JSON.stringify(message));
  const waiting = new Map();
  const listeners = new Map();
  let next = 1;
  const ipcRenderer = strict('ipcRenderer', {
    invoke: (channel, ...values) => new Promise((resolve, reject) => {
      const id = next++;
      waiting.set(id, { resolve, reject });
      toMain({ kind: 'invoke', id, channel, values: values.map((value) => link.encode(value)) });
    }),
    on(channel, listener) {
      listeners.set(channel, [...(listeners.get(channel) ?? []), listener]);
      return ipcRenderer;
    },
  });
  window.${FROM_MAIN} = (message) => {
    if (message.kind === 'send') {
      const event = strict('IpcRendererEvent', { sender: ipcRenderer, ports: [] });
      for (const listener of listeners.get(message.channel) ?? []) listener(event, ...message.values);
      return;
    }
    const { resolve, reject } = waiting.get(message.id);
    waiting.delete(message.id);
    if (message.ok) resolve(message.value);
    else reject(new Error("Error invoking remote method '" + message.channel + "': " + message.message));
  };
  const exposed = new Set();
  const contextBridge = strict('contextBridge', {
    exposeInMainWorld: (key, value) => {
      if (exposed.has(key)) throw new Error('Cannot bind an API on top of an existing property on the window object');
      exposed.add(key);
      document.dispatchEvent(new CustomEvent('${EXPOSE}', { detail: JSON.stringify({ key, value: link.encode(value) }) }));
    },
  });
  const electron = strict('electron in a sandboxed preload', { contextBridge, ipcRenderer });
  const require = (name) => {
    if (name === 'electron') return electron;
    throw new Error('a sandboxed preload may not load ' + name);
  };
  try {
    ((require, module, exports) => {
${script}
    })(require, { exports: {} }, {});
    toMain({ kind: 'ready' });
  } catch (error) {
    toMain({ kind: 'broken', message: String(error && error.stack || error) });
  }
})();`;
}
