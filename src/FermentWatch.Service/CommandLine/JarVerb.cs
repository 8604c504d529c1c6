using System.CommandLine;
using FermentWatch.Service.CommandLine.Jars;

namespace FermentWatch.Service.CommandLine;

/// <summary><c>jar</c>: what is entered of jars.</summary>
internal static class JarVerb
{
    public static Command Create(CommandContext context) =>
        new("jar", "Jars: puts them up, enters a titration. Works while the service runs, which renews their forecasts within a minute.")
    {
        JarPutUpVerb.Create(context),
        JarTitrationVerb.Create(context),
    };
}
