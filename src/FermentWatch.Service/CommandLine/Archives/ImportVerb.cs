using System.CommandLine;
using FermentWatch.Service.CommandLine.OldReadings;
using FermentWatch.Storage;
using FermentWatch.Storage.Archives.Taking;

namespace FermentWatch.Service.CommandLine.Archives;

/// <summary><c>import</c>: a household out of a zip, or readings out of a CSV file.</summary>
internal static class ImportVerb
{
    public static Command Create(CommandContext context)
    {
        var from = new Argument<string>("FILE.zip") { Description = "What 'fermentwatch export' wrote." };
        var verb = new Command("import", "Makes the household of an export in the folder of Storage:Folder, where there must be none and no service "
            + "may run. The whole file is checked first; where anything is wrong it is said by file and line, and nothing is taken.") { from };
        var settings = new SettingsOptions(verb);
        verb.SetAction((call, cancellationToken) => settings.WithSettingsAsync(call, context, (_, read) =>
            TakeAsync(read.Storage, call.GetValue(from)!, context, cancellationToken)));
        verb.Add(ImportReadingsVerb.Create(context));
        return verb;
    }

    private static async Task<int> TakeAsync(StorageOptions storage, string path, CommandContext context, CancellationToken cancellationToken)
    {
        try
        {
            ArchiveTroubles troubles = await Consoles.WithProgressAsync("readings", context,
                progress => Task.Run(() => new HouseholdImport(storage).Take(path, progress, cancellationToken), cancellationToken));
            if (troubles.Count > 0)
                return Say(troubles, context);
            await context.Output.WriteLineAsync($"The household is in {Path.GetFullPath(storage.Folder)}. Passwords and keys stayed behind: "
                + "give each person a password by 'fermentwatch member password NAME', each sensor one on its "
                + "page, and set webhooks, push and links for guests anew.");
            return ExitCode.Done;
        }
        catch (Exception trouble) when (trouble is DatabaseRefusedException or IOException or UnauthorizedAccessException)
        {
            return context.Fail(trouble.Message);
        }
    }

    private static int Say(ArchiveTroubles troubles, CommandContext context)
    {
        foreach (string line in troubles.Kept)
            context.Error.WriteLine(line);
        if (troubles.Count > troubles.Kept.Count)
            context.Error.WriteLine($"and {troubles.Count - troubles.Kept.Count} more");
        return context.Fail("Nothing was taken.");
    }
}
