using FermentWatch.Acts.Households;
using FermentWatch.Kitchen.Places;
using FermentWatch.Web.Api.Answers;
using FermentWatch.Web.Gates;

namespace FermentWatch.Web.Api;

/// <summary>The household and its places.</summary>
internal static class HouseholdEndpoints
{
    public static void MapHousehold(this RouteGroupBuilder api)
    {
        RouteGroupBuilder household = api.MapGroup("").WithTags("household");
        household.MapGet("/household", ReadAsync).WithSummary("What holds for the household.").Produces<HouseholdAnswer>();
        household.MapPut("/household",
            WriteAsync).Does<DescribeHousehold>().WithSummary("Writes what holds for the household.").Produces<HouseholdAnswer>()
                .ProducesValidationProblem(422);
        household.MapGet("/places", PlacesAsync).WithSummary("Every place, in shelf order.").Produces<PlaceAnswer[]>();
        household.MapPost("/places", WritePlaceAsync).Does<DescribePlace>()
            .WithSummary("Adds a place, or changes the one with this id.").Produces<PlaceAnswer[]>().ProducesValidationProblem(422);
    }

    private static async Task<IResult> ReadAsync(HouseholdReader home, CancellationToken cancellationToken) =>
        Results.Ok(HouseholdAnswer.Of((await home.NowAsync(cancellationToken)).Household));

    private static async Task<IResult> WriteAsync(HouseholdInput input, DescribeHousehold act, HouseholdReader home,
        CancellationToken cancellationToken)
    {
        var refusals = await act.DoAsync(input, cancellationToken);
        return refusals.Count > 0 ? RefusalProblem.Of(refusals) : await ReadAsync(home, cancellationToken);
    }

    private static async Task<IResult> PlacesAsync(HouseholdReader home, CancellationToken cancellationToken) =>
        Results.Ok((await home.PlacesAsync(cancellationToken)).Select(PlaceAnswer.Of));

    private static async Task<IResult> WritePlaceAsync(PlaceInput input, DescribePlace act, HouseholdReader home, CancellationToken cancellationToken)
    {
        var refusals = await act.DoAsync(input, cancellationToken);
        return refusals.Count > 0 ? RefusalProblem.Of(refusals) : await PlacesAsync(home, cancellationToken);
    }
}
