namespace FermentWatch.Web.Pages.Layout;

/// <summary>The style sheet of every page.</summary>
public static class StyleSheet
{
    /// <summary>Where it is fetched.</summary>
    public static string Address { get; } = BuiltInFiles.AddressOf("fermentwatch.css");
}
