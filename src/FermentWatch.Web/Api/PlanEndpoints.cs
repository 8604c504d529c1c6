using System.Text;
using FermentWatch.Acts.Planning;
using FermentWatch.Kitchen.Planning;
using FermentWatch.Web.Api.Answers;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace FermentWatch.Web.Api;

/// <summary>The plan of a winter, and the same as a calendar.</summary>
internal static class PlanEndpoints
{
    public static void MapPlan(this RouteGroupBuilder api)
    {
        RouteGroupBuilder plan = api.MapGroup("").WithTags("plan");
        plan.MapGet("/plan", AskAsync).WithSummary("What to put up when, so that it lasts; what is left out is taken from the household's records.")
            .Produces<PlanAnswer>().ProducesValidationProblem(422).AddOpenApiOperationTransformer(DescribeFields);
        plan.MapGet("/plan.ics", FileAsync).WithSummary("The starts of a plan as a calendar.").Produces(200, contentType: "text/calendar")
            .ProducesValidationProblem(422).AddOpenApiOperationTransformer(DescribeFields);
    }

    /// <summary>What an address asks; a field that is there several times is a list.</summary>
    public static PlanForm FormOf(IQueryCollection query) => PlanForm.Of(name => string.Join(',', query[name].OfType<string>()));

    private static async Task<IResult> AskAsync(HttpContext context, AskPlan ask, CancellationToken cancellationToken)
    {
        PlanReply reply = await ask.ForAsync(Asked(context), cancellationToken);
        return reply.Plan is null ? RefusalProblem.Of(reply.Refusals) : Results.Ok(PlanAnswer.Of(reply));
    }

    private static async Task<IResult> FileAsync(HttpContext context, AskPlan ask, IPlanFile file, CancellationToken cancellationToken)
    {
        PlanReply reply = await ask.ForAsync(Asked(context), cancellationToken);
        return reply.Plan is null ? RefusalProblem.Of(reply.Refusals)
            : Results.Bytes(Encoding.UTF8.GetBytes(file.Of(reply.Plan, reply.Household)), file.MediaType, "plan.ics");
    }

    /// <summary>A script that asks nothing in particular asks for the usual plan.</summary>
    private static PlanForm Asked(HttpContext context) => FormOf(context.Request.Query) is { IsEmpty: false } form ? form
        : PlanForm.Of(_ => null).With((PlanForm.ADay, "10"));

    private static Task DescribeFields(OpenApiOperation operation, OpenApiOperationTransformerContext context, CancellationToken cancellationToken)
    {
        operation.Parameters = [.. PlanForm.Fields.Select(field => new OpenApiParameter
        {
            Name = field.Name, In = ParameterLocation.Query, Description = field.Meaning, Schema = new OpenApiSchema { Type = JsonSchemaType.String },
        })];
        return Task.CompletedTask;
    }
}
