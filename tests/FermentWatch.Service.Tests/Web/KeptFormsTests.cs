using System.Text;
using FermentWatch.Web.Accounts;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Time.Testing;

namespace FermentWatch.Service.Tests.Web;

/// <summary>Forms that came in after their sign-in had ended.</summary>
public class KeptFormsTests
{
    private readonly FakeTimeProvider _clock = new();

    [Fact]
    public async Task Keep_WhatWasTyped_ComesBackForAnHourWithoutTokenAndPasswords()
    {
        var forms = new KeptForms(_clock);
        string? name = await forms.KeepAsync(Post("_handler=put-up&__RequestVerificationToken=x&Input.HowMuch=850+g&Input.Password=hush"));
        KeptForm form = forms.Find(name)!;
        Assert.Equal("put-up", form.Form);
        Assert.Equal(["Input.HowMuch=850 g"], form.Fields.Select(field => $"{field.Key}={field.Value}"));
        _clock.Advance(TimeSpan.FromMinutes(61));
        Assert.Null(forms.Find(name));
        Assert.Null(forms.Find(null));
    }

    [Fact]
    public async Task Keep_MoreThanAHundred_ForgetsTheFirst()
    {
        var forms = new KeptForms(_clock);
        var names = new List<string?>();
        for (int i = 0; i < 101; i++)
            names.Add(await forms.KeepAsync(Post($"_handler=ph&Input.Ph={i}")));
        Assert.Null(forms.Find(names[0]));
        Assert.Equal("1", forms.Find(names[1])!.Fields["Input.Ph"]);
        Assert.Equal("100", forms.Find(names[100])!.Fields["Input.Ph"]);
    }

    [Fact]
    public async Task Keep_TooLargeNoFormBrokenOrTheChangeOfAPassword_KeepsNothing()
    {
        var forms = new KeptForms(_clock);
        Assert.Null(await forms.KeepAsync(Post($"Input.Note={new string('a', 40_000)}")));
        Assert.Null(await forms.KeepAsync(Post("{}", "application/json")));
        Assert.Null(await forms.KeepAsync(Post("--x", "multipart/form-data; boundary=y")));
        Assert.Null(await forms.KeepAsync(Post("_handler=password&Input.Old=hush", path: "/password")));
        Assert.Null(await forms.KeepAsync(Post("_handler=ph&Input.Ph=4", method: "GET")));
    }

    private static HttpRequest Post(string body, string type = "application/x-www-form-urlencoded", string path = "/put-up", string method = "POST")
    {
        byte[] bytes = Encoding.UTF8.GetBytes(body);
        HttpRequest request = new DefaultHttpContext().Request;
        (request.Method, request.Path, request.ContentType, request.ContentLength, request.Body) = (method, path, type, bytes.Length,
            new MemoryStream(bytes));
        return request;
    }
}
