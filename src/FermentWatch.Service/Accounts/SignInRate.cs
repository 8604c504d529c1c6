using System.Threading.RateLimiting;
using Microsoft.AspNetCore.RateLimiting;

namespace FermentWatch.Service.Accounts;

/// <summary>How often passwords may be tried from one address.</summary>
internal static class SignInRate
{
    public const string Policy = "sign-in";
    private const int TriesAMinute = 20;

    public static IServiceCollection AddSignInRate(this IServiceCollection services) => services.AddRateLimiter(options =>
    {
        options.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
        options.OnRejected = async (context, cancellationToken) =>
        {
            context.HttpContext.Response.Headers.RetryAfter = "60";
            context.HttpContext.Response.ContentType = "text/plain; charset=utf-8";
            await context.HttpContext.Response.WriteAsync("Too many tries. Wait a minute, then try again.", cancellationToken);
        };
        options.AddPolicy(Policy, context => HttpMethods.IsPost(context.Request.Method)
            ? RateLimitPartition.GetFixedWindowLimiter(context.Connection.RemoteIpAddress?.ToString() ?? "",
                _ => new FixedWindowRateLimiterOptions { PermitLimit = TriesAMinute, Window = TimeSpan.FromMinutes(1), QueueLimit = 0 })
            : RateLimitPartition.GetNoLimiter("looking"));
    });
}
