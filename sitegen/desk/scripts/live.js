/* Loads a page of the live site anew once it is no more what is shown. While nobody looks at it, it holds no
   connection: a browser has six of them for all pages of an address. */
{
  const address = document.currentScript.dataset.news;
  let source = null;

  const listen = () => {
    source?.close();
    source = null;
    if (document.hidden) return;
    source = new EventSource(address);
    source.addEventListener("message", () => {
      source.close();
      location.reload();
    });
  };

  document.addEventListener("visibilitychange", listen);
  listen();
}
