namespace FermentWatch.Web.Pages.Layout;

/// <summary>The script that shows notices while no page is open.</summary>
public static class PushWorker
{
    /// <summary>Where it is fetched: at the root, as a worker may only act for pages below its own folder.</summary>
    public const string Path = "/push-worker.js";
}
