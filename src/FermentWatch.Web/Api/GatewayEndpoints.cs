using System.Security.Claims;
using FermentWatch.Acts.Sensors;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Web.Accounts;
using FermentWatch.Web.Api.Answers;
using FermentWatch.Web.Gates;

namespace FermentWatch.Web.Api;

/// <summary>Gateways and buttons: what may publish at our broker under a topic filter.</summary>
internal static class GatewayEndpoints
{
    public static void MapGateways(this RouteGroupBuilder api)
    {
        RouteGroupBuilder gateways = api.MapGroup("/gateways").WithTags("sensors");
        gateways.MapGet("", AllAsync).WithSummary("Every gateway and button, without passwords.").Produces<GatewayAnswer[]>();
        gateways.MapPost("", AddAsync).Does<AdmitGear>()
            .WithSummary("Adds a gateway, or buttons by the jars where no filter is given, and says its password this once.")
            .Produces<NewGatewayAnswer>(201).ProducesValidationProblem(422);
        gateways.MapDelete("/{user}", RemoveAsync).Does<AdmitGear>().WithSummary("Takes a gateway's credential away; what it published stays.")
            .Produces(204).ProducesProblem(404);
    }

    private static async Task<IResult> AllAsync(AdmitGear gear, CancellationToken cancellationToken) =>
        Results.Ok((await gear.GatewaysAsync(cancellationToken)).Select(each => GatewayAnswer.Of(each.Credential)));

    private static async Task<IResult> AddAsync(GatewayForm form, ClaimsPrincipal person, AdmitGear desk, BrokerAddress address,
        CancellationToken cancellationToken)
    {
        var (added, refusals) = await desk.AddAsync(form.ToInput(person.Known()), cancellationToken);
        if (added is null)
            return RefusalProblem.Of(refusals);
        return Results.Created("/api/v1/gateways", new NewGatewayAnswer(
            address.Host, address.Port, address.Tls, added.Issued.Credential.User, added.Issued.Password, added.Issued.Credential.TopicFilter));
    }

    private static async Task<IResult> RemoveAsync(string user, AdmitGear gear, CancellationToken cancellationToken) =>
        await gear.RemoveGatewayAsync(user, cancellationToken) ? Results.NoContent() : RefusalProblem.NotThere($"gateway {user}");
}
