using Microsoft.AspNetCore.Antiforgery;

namespace FermentWatch.Web.Gates;

/// <summary>
/// A button that is gone from its page when it is pressed once more: a second tap, or somebody was faster. The framework finds no form
/// of that name and answers 400; people get the page as it stands now, and nothing is done again.
/// </summary>
public static class DoneAlready
{
    /// <summary>Leads such a form to its page.</summary>
    public static async Task LeadAsync(HttpContext context, RequestDelegate next)
    {
        await next(context);
        HttpRequest request = context.Request;
        bool isOurForm = HttpMethods.IsPost(request.Method) && context.Features.Get<IAntiforgeryValidationFeature>() is { IsValid: true }
            && request.HasFormContentType && request.Form.ContainsKey("_handler");
        if (!isOurForm || context.Response.HasStarted || context.Response.StatusCode != StatusCodes.Status400BadRequest)
            return;
        context.Response.Clear();
        context.Response.StatusCode = StatusCodes.Status303SeeOther;
        context.Response.Headers.Location = $"{request.PathBase}{request.Path}{request.QueryString}";
    }
}
