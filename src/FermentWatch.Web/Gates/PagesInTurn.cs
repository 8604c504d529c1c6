using System.Threading.RateLimiting;

namespace FermentWatch.Web.Gates;

/// <summary>
/// Bounds how many pages are made at the same time, so that readings come in however many people look. What people enter, the sign
/// of life and the figures for a collector are never held back: they cost little, and waiting for a forecast they would keep a place for seconds.
/// </summary>
internal sealed class PagesInTurn(WebOptions options) : IDisposable
{
    private const string Wait = "Too many pages are asked for at this moment. Nothing is lost; try again in a few seconds.";
    private const string RetryAfterSeconds = "2";

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    private readonly ConcurrencyLimiter _places = new(new ConcurrencyLimiterOptions
    {
        PermitLimit = options.MaxPagesAtOnce > 0 ? options.MaxPagesAtOnce : Math.Max(1, Environment.ProcessorCount / 2),
        QueueLimit = options.MaxPagesWaiting,
        QueueProcessingOrder = QueueProcessingOrder.OldestFirst,
    });

    /// <summary>Lets a request pass when there is a place for it.</summary>
    public async Task PassAsync(HttpContext context, RequestDelegate next)
    {
        if (!HttpMethods.IsGet(context.Request.Method) || IsForMachines(context.Request.Path))
        {
            await next(context);
            return;
        }
        using RateLimitLease place = await WaitAsync(context.RequestAborted);
        if (place.IsAcquired)
        {
            await next(context);
            return;
        }
        context.Response.StatusCode = StatusCodes.Status503ServiceUnavailable;
        context.Response.Headers.RetryAfter = RetryAfterSeconds;
        context.Response.ContentType = "text/plain; charset=utf-8";
        await context.Response.WriteAsync(Wait, context.RequestAborted);
    }

    public void Dispose() => _places.Dispose();

    private static bool IsForMachines(PathString path) => path.StartsWithSegments("/healthz") || path.StartsWithSegments("/metrics");

    private async Task<RateLimitLease> WaitAsync(CancellationToken aborted)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(aborted);
        patience.CancelAfter(Patience);
        try
        {
            return await _places.AcquireAsync(1, patience.Token);
        }
        catch (OperationCanceledException)
        {
            return NoPlace.Instance;
        }
    }

    private sealed class NoPlace : RateLimitLease
    {
        public static NoPlace Instance { get; } = new();

        public override bool IsAcquired => false;

        public override IEnumerable<string> MetadataNames => [];

        public override bool TryGetMetadata(string metadataName, out object? metadata)
        {
            metadata = null;
            return false;
        }
    }
}
