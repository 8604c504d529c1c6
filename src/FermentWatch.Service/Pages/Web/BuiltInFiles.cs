using Microsoft.Extensions.FileProviders;

namespace FermentWatch.Service.Pages.Web;

/// <summary>Files of the pages, carried inside the program so that they are there however it is started.</summary>
public static class BuiltInFiles
{
    /// <summary>The content of <c>wwwroot</c>.</summary>
    public static IFileProvider Provider { get; } = new EmbeddedFileProvider(typeof(BuiltInFiles).Assembly, "FermentWatch.Service.wwwroot");
}
