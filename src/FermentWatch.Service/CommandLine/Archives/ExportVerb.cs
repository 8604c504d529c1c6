using System.CommandLine;
using FermentWatch.Kinetics;
using FermentWatch.Service.CommandLine.Records;
using FermentWatch.Storage;
using FermentWatch.Storage.Archives;

namespace FermentWatch.Service.CommandLine.Archives;

/// <summary><c>export</c>: the household as one zip.</summary>
internal static class ExportVerb
{
    public static Command Create(CommandContext context)
    {
        var to = new Option<string>("--to") { HelpName = "FILE.zip", Description = "The file to write; it must not be there yet.", Required = true };
        var readings = new Option<bool>("--readings") { Description = "All readings of all sensors as well; years of them take minutes." };
        var verb = new Command("export", "Writes the household into one zip: records as JSON and CSV, photos, and readings where asked "
            + "for. Passwords and keys stay behind; README.txt in it says what is what. Changes nothing, and works while the service "
            + "runs.") { to, readings };
        var settings = new SettingsOptions(verb);
        verb.SetAction((call, cancellationToken) => settings.WithSettingsAsync(call, context, (_, read) =>
            HouseholdRecords.NoneIn(read.Storage) is { } none ? Task.FromResult(context.Fail(none))
                : WriteAsync(read.Storage, call.GetValue(to)!, call.GetValue(readings), context, cancellationToken)));
        return verb;
    }

    private static async Task<int> WriteAsync(
        StorageOptions storage, string path, bool withReadings, CommandContext context, CancellationToken cancellationToken)
    {
        if (File.Exists(path) || Directory.Exists(path))
            return context.Refuse([new Refusal("to", path, "the name of a file that is not there yet would be right")]);
        string draft = path + ".draft";
        try
        {
            await using (var file = new FileStream(draft, PrivateFiles.Options(FileMode.Create)))
                await Consoles.WithProgressAsync("readings", context, async progress =>
                {
                    await new HouseholdArchive(storage).WriteAsync(file, withReadings, progress, cancellationToken);
                    return true;
                });
            File.Move(draft, path);
            await context.Output.WriteLineAsync($"{path}: {new FileInfo(path).Length:N0} bytes. It holds what people wrote: keep it as you keep "
                + "the household's folder.");
            return ExitCode.Done;
        }
        catch (Exception trouble) when (trouble is DatabaseRefusedException or IOException or UnauthorizedAccessException)
        {
            return context.Fail(trouble.Message);
        }
        finally
        {
            File.Delete(draft);
        }
    }
}
