using FermentWatch.Kitchen.Entry;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Service.Api.Answers;
using Channel = FermentWatch.Kitchen.Notices.Channel;

namespace FermentWatch.Service.Api;

/// <summary>How people are reached, and what became of the notices.</summary>
internal static class NoticeEndpoints
{
    private const int Shown = 100;

    public static void MapNotices(this RouteGroupBuilder api)
    {
        RouteGroupBuilder notices = api.MapGroup("").WithTags("notices");
        notices.MapGet("/notice-routes", RoutesAsync).WithSummary("How people are reached; secrets are not shown.").Produces<NoticeRouteAnswer[]>();
        notices.MapPost("/notice-routes", AddAsync).WithSummary("Adds a way to reach somebody.").Produces<NoticeRouteAnswer>(201).ProducesValidationProblem(422);
        notices.MapDelete("/notice-routes/{id:guid}", RemoveAsync).WithSummary("Removes one.").Produces(204);
        notices.MapGet("/notices", LatestAsync).WithSummary("The latest notices, and what is stuck and why.").Produces<NoticeAnswer[]>();
    }

    private static async Task<IResult> RoutesAsync(INoticeBook book, CancellationToken cancellationToken) =>
        Results.Ok((await book.RoutesAsync(cancellationToken)).Select(NoticeRouteAnswer.Of));

    private static async Task<IResult> LatestAsync(INoticeBook book, CancellationToken cancellationToken) =>
        Results.Ok((await book.LatestAsync(Shown, cancellationToken)).Select(NoticeAnswer.Of));

    private static async Task<IResult> AddAsync(NoticeRouteForm form, INoticeBook book, CancellationToken cancellationToken)
    {
        var reader = new FieldReader();
        if (string.IsNullOrWhiteSpace(form.Person))
            reader.Refuse("person", form.Person, "a name would be right");
        Channel channel = reader.ReadChoice("channel", form.Channel, Channel.Webhook);
        if (!IsAddress(channel, form.Address))
            reader.Refuse("address", form.Address, channel == Channel.Webhook ? "a web address such as https://push.example.net/kitchen would be right" : "a topic such as kitchen/notices would be right");
        if (reader.Refusals.Count > 0)
            return RefusalProblem.Of(reader.Refusals);
        var route = new NoticeRoute { Id = Guid.CreateVersion7(), Person = form.Person!.Trim(), Channel = channel, Address = form.Address!.Trim(), Secret = form.Secret };
        await book.AddRouteAsync(route, cancellationToken);
        return Results.Created($"/api/v1/notice-routes/{route.Id}", NoticeRouteAnswer.Of(route));
    }

    private static async Task<IResult> RemoveAsync(Guid id, INoticeBook book, CancellationToken cancellationToken)
    {
        await book.RemoveRouteAsync(id, cancellationToken);
        return Results.NoContent();
    }

    private static bool IsAddress(Channel channel, string? address) => channel == Channel.Webhook
        ? Uri.TryCreate(address, UriKind.Absolute, out Uri? uri) && uri.Scheme is "http" or "https"
        : !string.IsNullOrWhiteSpace(address) && address.IndexOfAny(['+', '#', '\0']) < 0;
}
