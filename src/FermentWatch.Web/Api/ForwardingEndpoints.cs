using FermentWatch.Kitchen.Forwarding;
using FermentWatch.Web.Api.Answers;

namespace FermentWatch.Web.Api;

/// <summary>How the passing on of series stands.</summary>
internal static class ForwardingEndpoints
{
    public static void MapForwarding(this RouteGroupBuilder api) =>
        api.MapGet("/series", StateAsync).WithTags("series").WithSummary("How the passing on of series stands, and what was left out of it.")
            .Produces<ForwardingAnswer>();

    private static async Task<IResult> StateAsync(IForwardCursors cursors, IServiceProvider services, CancellationToken cancellationToken)
    {
        var forwarding = services.GetService<IForwardingState>();
        return Results.Ok(new ForwardingAnswer(
            forwarding is not null, forwarding?.Trouble,
            [.. (await cursors.LeftOutAsync(cancellationToken)).Select(NotForwardedAnswer.Of)]));
    }
}
