using System.Security.Cryptography;

namespace FermentWatch.Service.Pages.Layout;

/// <summary>The style sheet's address carries a print of its content, so that a browser may keep it for ever.</summary>
public static class StyleSheet
{
    /// <summary>Where it is fetched.</summary>
    public static string Address { get; } = $"/fermentwatch.css?v={Print()}";

    private static string Print()
    {
        using Stream content = Web.BuiltInFiles.Provider.GetFileInfo("fermentwatch.css").CreateReadStream();
        return Convert.ToHexStringLower(SHA256.HashData(content))[..12];
    }
}
