/** Does a live session hold for a night? */
package holdfast.bench.session;
