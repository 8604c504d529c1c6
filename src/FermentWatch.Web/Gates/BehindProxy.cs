using System.Net;
using Microsoft.AspNetCore.HttpOverrides;
using IPNetwork = System.Net.IPNetwork;

namespace FermentWatch.Web.Gates;

/// <summary>Who calls, by which scheme, name and path: by the word of a trusted proxy, else as the connection says.</summary>
internal static partial class BehindProxy
{
    /// <summary>Stands first in the way of a request: all that follows goes by what it sets.</summary>
    public static void UseProxies(this WebApplication app, WebOptions web)
    {
        (IReadOnlyList<IPNetwork> networks, IReadOnlyList<IPAddress> addresses) = web.Proxies();
        var forwarded = new ForwardedHeadersOptions
        {
            ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto | ForwardedHeaders.XForwardedHost,
                ForwardLimit = null,
        };
        forwarded.KnownIPNetworks.Clear();
        forwarded.KnownProxies.Clear();
        foreach (IPNetwork network in networks)
            forwarded.KnownIPNetworks.Add(network);
        foreach (IPAddress address in addresses)
            forwarded.KnownProxies.Add(address);
        // With empty lists the library would believe everybody.
        if (networks.Count + addresses.Count > 0)
            app.UseForwardedHeaders(forwarded);
        app.Use(SayWhoIsNotTrusted(app.Logger));
        app.Use(CalledByName(new KnownHosts(web, Environment.MachineName)));
        app.Use(UnderSubPath(web.SubPath));
    }

    /// <summary>A proxy that is not trusted is said once: its household cannot sign in, and would not know why.</summary>
    private static Func<HttpContext, RequestDelegate, Task> SayWhoIsNotTrusted(ILogger logger)
    {
        int said = 0;
        return (context, next) =>
        {
            // What a trusted proxy forwarded was taken off the request.
            if (context.Request.Headers.ContainsKey(ForwardedHeadersDefaults.XForwardedProtoHeaderName) && Interlocked.Exchange(ref said, 1) == 0)
                SayUntrusted(logger, context.Connection.RemoteIpAddress);
            return next(context);
        };
    }

    private static Func<HttpContext, RequestDelegate, Task> CalledByName(KnownHosts hosts) => (context, next) =>
    {
        if (hosts.Has(context.Request.Host.Host))
            return next(context);
        context.Response.StatusCode = StatusCodes.Status400BadRequest;
        context.Response.ContentType = "text/plain; charset=utf-8";
        return context.Response.WriteAsync("This kitchen does not go by that name. On its machine, the setting Web:AllowedHosts lets more names in.");
    };

    /// <summary>A proxy may leave the sub-path on or take it off; links and cookies carry it either way.</summary>
    private static Func<HttpContext, RequestDelegate, Task> UnderSubPath(PathString sub) => (context, next) =>
    {
        if (!sub.HasValue)
            return next(context);
        if (context.Request.Path.StartsWithSegments(sub, out PathString rest))
            context.Request.Path = rest.HasValue ? rest : "/";
        context.Request.PathBase = sub;
        context.Response.OnStarting(() =>
        {
            if (context.Response is { StatusCode: StatusCodes.Status201Created, Headers.Location: [['/', ..] made] })
                context.Response.Headers.Location = sub + made;
            return Task.CompletedTask;
        });
        return next(context);
    };

    [LoggerMessage(4002, LogLevel.Warning,
        "A request from {Proxy} came with X-Forwarded-Proto, which is left unread: if your proxy stands there, name it in Web:TrustedProxies. Not "
        + "said again")]
    private static partial void SayUntrusted(ILogger logger, IPAddress? proxy);
}
