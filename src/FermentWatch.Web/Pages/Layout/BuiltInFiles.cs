using System.Security.Cryptography;
using Microsoft.Extensions.FileProviders;

namespace FermentWatch.Web.Pages.Layout;

/// <summary>Files of the pages, carried inside the program so that they are there however it is started.</summary>
public static class BuiltInFiles
{
    /// <summary>The content of <c>wwwroot</c>.</summary>
    public static IFileProvider Provider { get; } = new EmbeddedFileProvider(typeof(BuiltInFiles).Assembly, "FermentWatch.Web.wwwroot");

    /// <summary>Where a file is fetched, counted from the first page, with a print of its content, so that a browser may keep it for ever.</summary>
    public static string AddressOf(string name)
    {
        using Stream content = Provider.GetFileInfo(name).CreateReadStream();
        return $"{name}?v={Convert.ToHexStringLower(SHA256.HashData(content))[..12]}";
    }
}

/// <summary>The style sheets of every page.</summary>
public static class StyleSheet
{
    /// <summary>Where the tokens and what most pages are made of are fetched.</summary>
    public static string Address { get; } = BuiltInFiles.AddressOf("fermentwatch.css");

    /// <summary>Where rows, boards and what is tapped on them are fetched.</summary>
    public static string Boards { get; } = BuiltInFiles.AddressOf("boards.css");
}

/// <summary>The script that stands between phone and kitchen while no page is open: it shows notices, and keeps the round where there is no
/// reception.</summary>
public static class KitchenWorker
{
    /// <summary>Where it is fetched: at the root, as a worker may only act for pages below its own folder.</summary>
    public const string Path = "/kitchen-worker.js";
}
