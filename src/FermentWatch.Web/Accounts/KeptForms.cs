using System.Collections.Concurrent;
using System.Security.Cryptography;

namespace FermentWatch.Web.Accounts;

/// <summary>
/// What was typed into a form that came in after its sign-in had ended: kept until somebody has signed in again, so that the form
/// comes back filled in. Anybody may send one, so that few and small ones are kept, in memory and for an hour; passwords never.
/// </summary>
public sealed class KeptForms(TimeProvider clock)
{
    private const int Most = 100, MostBytes = 32 * 1024;
    private static readonly TimeSpan Kept = TimeSpan.FromHours(1);
    private static readonly string[] OwnFields = ["__RequestVerificationToken", "_handler"];

    private readonly ConcurrentDictionary<string, KeptForm> _forms = [];
    private readonly ConcurrentQueue<string> _order = [];

    /// <summary>Keeps the form of a request; its name, or null where it is none, is too large or holds nothing that was typed.</summary>
    public async Task<string?> KeepAsync(HttpRequest request)
    {
        if (!HttpMethods.IsPost(request.Method) || !request.HasFormContentType || request.ContentLength is not (> 0 and <= MostBytes)
            || request.Path == "/password")
            return null;
        if (await ReadAsync(request) is not { } form)
            return null;
        var fields = form.Where(field => !OwnFields.Contains(field.Key) && !field.Key.Contains("Password", StringComparison.OrdinalIgnoreCase))
            .ToDictionary(field => field.Key, field => field.Value.ToString());
        string name = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));
        _forms[name] = new KeptForm(form["_handler"].ToString(), fields, clock.GetUtcNow() + Kept);
        _order.Enqueue(name);
        while (_order.Count > Most && _order.TryDequeue(out string? oldest))
            _forms.TryRemove(oldest, out _);
        return name;
    }

    /// <summary>What can be read as a form; null where it is none, whatever it says of itself.</summary>
    private static async Task<IFormCollection?> ReadAsync(HttpRequest request)
    {
        try
        {
            return await request.ReadFormAsync(request.HttpContext.RequestAborted);
        }
        catch (Exception trouble) when (trouble is InvalidDataException or IOException)
        {
            return null;
        }
    }

    /// <summary>A form that was kept; null where there is none of this name, or its hour is over.</summary>
    public KeptForm? Find(string? name) =>
        name is not null && _forms.TryGetValue(name, out KeptForm? form) && clock.GetUtcNow() < form.Until ? form : null;
}

/// <summary>A form that was kept.</summary>
/// <param name="Form">Which form of its page it was.</param>
/// <param name="Fields">What was typed, by the names of the fields.</param>
/// <param name="Until">When it is forgotten.</param>
public sealed record KeptForm(string Form, IReadOnlyDictionary<string, string> Fields, DateTimeOffset Until);
