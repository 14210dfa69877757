/** Where the window is, kept in step with its address. */
import { formatRoute, parseRoute, type Route } from "../places/route";

/** The window's route; changing it changes the address, and the other way round. */
export class RouteState {
  #current: Route = $state.raw(parseRoute(location.hash));

  /** The route that is shown. */
  get current(): Route {
    return this.#current;
  }

  /** Follows the window's address. Returns how to stop. */
  follow(): () => void {
    const read = () => {
      this.#current = parseRoute(location.hash);
    };
    window.addEventListener("hashchange", read);
    return () => window.removeEventListener("hashchange", read);
  }

  /** Goes somewhere, leaving a step in the window's history. */
  go(route: Route): void {
    location.hash = formatRoute(route);
  }

  /** Goes somewhere in place of the current step. */
  replace(route: Route): void {
    history.replaceState(null, "", formatRoute(route));
    this.#current = route;
  }
}
