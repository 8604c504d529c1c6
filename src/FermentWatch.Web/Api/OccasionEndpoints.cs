using FermentWatch.Acts.Notices;
using FermentWatch.Kitchen.Occasions;
using FermentWatch.Web.Api.Answers;
using FermentWatch.Web.Gates;

namespace FermentWatch.Web.Api;

/// <summary>What a household is told of besides the round, and what it does not want to hear.</summary>
internal static class OccasionEndpoints
{
    public static void MapOccasions(this RouteGroupBuilder api)
    {
        RouteGroupBuilder occasions = api.MapGroup("/occasions").WithTags("notices");
        occasions.MapGet("/", KindsAsync).WithSummary("Every kind of occasion, and whether it is muted.").Produces<OccasionKindAnswer[]>();
        occasions.MapPut("/{kind}", MuteAsync).Does<MuteOccasion>().WithSummary("Mutes a kind, or tells of it again.").Produces(204)
            .ProducesProblem(404);
    }

    private static async Task<IResult> KindsAsync(MuteOccasion act, CancellationToken cancellationToken) =>
        Results.Ok((await act.AllAsync(cancellationToken))
            .Select(each => new OccasionKindAnswer(each.Kind, OccasionWords.Of(each.Kind), each.IsMuted)));

    private static async Task<IResult> MuteAsync(string kind, MuteForm form, MuteOccasion act, CancellationToken cancellationToken)
    {
        if (!Enum.TryParse(kind, ignoreCase: true, out OccasionKind read) || !Enum.IsDefined(read) || char.IsAsciiDigit(kind[0]))
            return RefusalProblem.NotThere($"kind of occasion '{kind}'");
        await act.DoAsync(read, form.Muted, cancellationToken);
        return Results.NoContent();
    }
}
