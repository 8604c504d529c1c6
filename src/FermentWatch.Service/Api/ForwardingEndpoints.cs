using FermentWatch.Kitchen.Forwarding;
using FermentWatch.Service.Api.Answers;
using FermentWatch.Service.Loops;

namespace FermentWatch.Service.Api;

/// <summary>How the passing on of series stands.</summary>
internal static class ForwardingEndpoints
{
    public static void MapForwarding(this RouteGroupBuilder api) =>
        api.MapGet("/series", StateAsync).WithTags("series").WithSummary("How the passing on of series stands, and what was left out of it.")
            .Produces<ForwardingAnswer>();

    private static async Task<IResult> StateAsync(IForwardCursors cursors, IServiceProvider services, CancellationToken cancellationToken)
    {
        var forwarding = services.GetService<SeriesForwarding>();
        return Results.Ok(new ForwardingAnswer(
            forwarding is not null, forwarding?.Trouble,
            [.. (await cursors.LeftOutAsync(cancellationToken)).Select(NotForwardedAnswer.Of)]));
    }
}
