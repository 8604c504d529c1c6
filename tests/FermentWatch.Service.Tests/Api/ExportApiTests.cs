using System.IO.Compression;
using System.Net;
using FermentWatch.RunningTests;

namespace FermentWatch.Service.Tests.Api;

public class ExportApiTests
{
    [Fact]
    public async Task Export_ByAnAdult_IsAZipWithJarsAndByAChildIsRefused()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script ada = await Script.SignedInAsync(kitchen);
        using Script lena = await Script.ChildAsync(kitchen);
        await ada.PutUpAsync();
        HttpResponseMessage answer = await ada.PostAsync("/api/v1/export?readings=true", new { });
        Assert.Equal((HttpStatusCode.OK, "application/zip", true),
            (answer.StatusCode, answer.Content.Headers.ContentType?.MediaType, answer.Headers.CacheControl?.NoStore));
        Assert.Matches("^household-\\d{4}-\\d\\d-\\d\\d\\.zip$", answer.Content.Headers.ContentDisposition?.FileName?.Trim('"'));
        using var zip = new ZipArchive(await answer.Content.ReadAsStreamAsync());
        using var jars = new StreamReader(zip.GetEntry("records/jar.json")!.Open());
        Assert.Contains("\"number\":1,", await jars.ReadToEndAsync(), StringComparison.Ordinal);
        Assert.Equal("manifest.json", zip.Entries[^1].FullName);

        Assert.Equal(HttpStatusCode.Forbidden, (await lena.PostAsync("/api/v1/export", new { })).StatusCode);
        Assert.Contains("Download everything", await ada.Http.GetStringAsync("/household"), StringComparison.Ordinal);
        Assert.DoesNotContain("Download everything", await lena.Http.GetStringAsync("/household"), StringComparison.Ordinal);
    }
}
