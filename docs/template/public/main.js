// The search index splits words at hyphens, but its query language reads the hyphen within "push-pull" or "R-134a" as "without": words are
// handed to it apart.
const post = Worker.prototype.postMessage;
Worker.prototype.postMessage = function (message, ...rest) {
  const query = message && typeof message.q === 'string'
    ? { ...message, q: message.q.replace(/([^\s])-(?=[^\s])/g, '$1 ') }
    : message;
  return post.call(this, query, ...rest);
};

export default {};
