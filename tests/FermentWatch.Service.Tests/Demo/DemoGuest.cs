using System.Text.RegularExpressions;

namespace FermentWatch.Service.Tests.Demo;

/// <summary>Somebody who signs in with a browser's form and looks at the jars.</summary>
internal sealed class DemoGuest(HttpClient client, Uri address)
{
    /// <summary>Signs in and reads the page of the jars.</summary>
    public async Task<string> JarsAsync(string name, string password, CancellationToken cancellationToken)
    {
        var signIn = new Uri(address, "sign-in");
        string form = await client.GetStringAsync(signIn, cancellationToken);
        using var answer = new FormUrlEncodedContent(new Dictionary<string, string>
        {
            ["_handler"] = "sign-in",
            ["__RequestVerificationToken"] = Regex.Match(form, "__RequestVerificationToken\" value=\"([^\"]+)\"").Groups[1].Value,
            ["Input.User"] = name,
            ["Input.Password"] = password,
        });
        (await client.PostAsync(signIn, answer, cancellationToken)).EnsureSuccessStatusCode();
        return await client.GetStringAsync(new Uri(signIn, "/jars"), cancellationToken);
    }
}
