using FermentWatch.Acts.Households;
using FermentWatch.Kitchen.Households;
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
            WriteAsync).Does<DescribeHousehold>().WithSummary("Writes what holds for the household.").Produces<HouseholdAnswer>().ProducesValidationProblem(422);
        household.MapGet("/places", PlacesAsync).WithSummary("Every place, in shelf order.").Produces<PlaceAnswer[]>();
        household.MapPost("/places", WritePlaceAsync).Does<DescribePlace>().WithSummary("Adds a place, or changes the one with this id.").Produces<PlaceAnswer[]>().ProducesValidationProblem(422);
    }

    private static async Task<IResult> ReadAsync(IHouseholdBook book, CancellationToken cancellationToken) =>
        Results.Ok(HouseholdAnswer.Of(await book.ReadAsync(cancellationToken)));

    private static async Task<IResult> WriteAsync(HouseholdInput input, DescribeHousehold act, IHouseholdBook book,
        CancellationToken cancellationToken)
    {
        var refusals = await act.DoAsync(input, cancellationToken);
        return refusals.Count > 0 ? RefusalProblem.Of(refusals) : await ReadAsync(book, cancellationToken);
    }

    private static async Task<IResult> PlacesAsync(IPlaceBook places, CancellationToken cancellationToken) =>
        Results.Ok((await places.AllAsync(cancellationToken)).Select(PlaceAnswer.Of));

    private static async Task<IResult> WritePlaceAsync(PlaceInput input, DescribePlace act, IPlaceBook places, CancellationToken cancellationToken)
    {
        var refusals = await act.DoAsync(input, cancellationToken);
        return refusals.Count > 0 ? RefusalProblem.Of(refusals) : await PlacesAsync(places, cancellationToken);
    }
}
