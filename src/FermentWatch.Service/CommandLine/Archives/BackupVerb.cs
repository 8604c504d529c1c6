using System.CommandLine;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Typed;
using FermentWatch.Service.CommandLine.Records;
using FermentWatch.Service.Settings;
using FermentWatch.Storage;
using FermentWatch.Storage.Backups;
using Microsoft.Data.Sqlite;
using NodaTime.Extensions;

namespace FermentWatch.Service.CommandLine.Archives;

/// <summary><c>backup</c>: both databases as one pair, while the service runs.</summary>
internal static class BackupVerb
{
    public static Command Create(CommandContext context)
    {
        var to = new Option<string>("--to") { HelpName = "FOLDER",
            Description = "The folder in which backups are kept; that of Backup:Folder without it." };
        var keep = new Option<string>("--keep") { HelpName = "NUMBER",
            Description = "How many to keep there, this one among them; all without it, or as many as Backup:Keep says in "
            + "the folder of Backup:Folder." };
        var verb = new Command("backup", "Copies both databases as they stand at one moment, checks the copy, and puts it into a folder of its own. "
            + "Works while the service runs. It holds everything, keys and passwords too: keep it as you keep the household's folder.") { to, keep };
        var settings = new SettingsOptions(verb);
        verb.SetAction(call => settings.WithSettingsAsync(call, context, (_, read) =>
            Task.FromResult(Make(read, call.GetValue(to), call.GetValue(keep), context))));
        return verb;
    }

    private static int Make(ServiceSettings settings, string? to, string? keep, CommandContext context)
    {
        if ((to ?? settings.Backup.Folder) is not { } folder)
            return context.Refuse([new Refusal("to", "nothing", "the folder for backups would be right, or set Backup:Folder")]);
        var reader = new FieldReader();
        int unset = to is null ? settings.Backup.Keep : BackupOptions.MostKept;
        int kept = reader.ReadWhole("keep", keep, unset, 1, BackupOptions.MostKept);
        if (reader.Refusals.Count > 0)
            return context.Refuse(reader.Refusals);
        if (HouseholdRecords.NoneIn(settings.Storage) is { } none)
            return context.Fail(none);
        try
        {
            var backups = new BackupFolder(folder);
            Backup made = backups.Make(settings.Storage, context.Clock.GetUtcNow().ToInstant());
            context.Output.WriteLine($"{made.Folder}: {made.Bytes:N0} bytes, checked.");
            if (backups.Keep(kept) is > 0 and var gone)
                context.Output.WriteLine($"{gone} older {(gone == 1 ? "backup" : "backups")} thrown away.");
            return ExitCode.Done;
        }
        catch (Exception trouble) when (trouble is DatabaseRefusedException or IOException or UnauthorizedAccessException or SqliteException)
        {
            return context.Fail($"No backup was made. {trouble.Message}");
        }
    }
}

/// <summary><c>restore</c>: a backup as the household.</summary>
internal static class RestoreVerb
{
    public static Command Create(CommandContext context)
    {
        var from = new Argument<string>("FOLDER") { Description = "One backup: the folder with records.db and readings.db." };
        var replace = new Option<bool>("--replace") { Description = "Let it take the place of the household that is there, which is put aside." };
        var verb = new Command("restore", "Makes a backup the household of Storage:Folder, where no service may run. It is checked first; people, "
            + "passwords, phones and sensors go on as they were.") { from, replace };
        var settings = new SettingsOptions(verb);
        verb.SetAction(call => settings.WithSettingsAsync(call, context, (_, read) =>
            Task.FromResult(Take(read.Storage, call.GetValue(from)!, call.GetValue(replace), context))));
        return verb;
    }

    private static int Take(StorageOptions storage, string from, bool replace, CommandContext context)
    {
        if (!Directory.Exists(from))
            return context.Refuse([new Refusal("FOLDER", from, "the folder of a backup would be right")]);
        if (new BackupFolder(from).All() is { Count: > 0 } several)
            return context.Refuse([new Refusal("FOLDER", from, $"one of the backups in it would be right; the newest is {several[^1].Folder}")]);
        try
        {
            string? aside = new HouseholdRestore(storage).Take(from, replace, context.Clock.GetUtcNow().ToInstant());
            context.Output.WriteLine($"The household of {from} is in {Path.GetFullPath(storage.Folder)}.");
            if (aside is not null)
                context.Output.WriteLine($"What was there is in {aside}.");
            return ExitCode.Done;
        }
        catch (Exception trouble) when (trouble is DatabaseRefusedException or IOException or UnauthorizedAccessException or SqliteException)
        {
            return context.Fail($"Nothing was restored. {trouble.Message}");
        }
    }
}
