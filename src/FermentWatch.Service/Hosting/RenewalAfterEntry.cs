using FermentWatch.Service.Loops;

namespace FermentWatch.Service.Hosting;

/// <summary>
/// After somebody has entered something, forecasts and states are renewed before the answer goes out, so that the page they
/// are sent to shows what they entered.
/// </summary>
internal sealed class RenewalAfterEntry(RequestDelegate next, ServiceLoops loops)
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(3);

    public async Task InvokeAsync(HttpContext context)
    {
        await next(context);
        if (HttpMethods.IsGet(context.Request.Method) || HttpMethods.IsHead(context.Request.Method) || context.Response.StatusCode >= 400)
            return;
        loops.States.Wake();
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted);
        patience.CancelAfter(Patience);
        try
        {
            await loops.Forecasts.WakeAndWaitAsync(patience.Token);
        }
        catch (OperationCanceledException)
        {
            // It is renewed all the same, only later than the answer.
        }
    }
}
