export { childOf, childrenOf, fieldOf, numberAttribute, type XmlElement } from './element.ts';
export { parseXml, rootName } from './parse.ts';
