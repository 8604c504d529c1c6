using FermentWatch.Storage.Readings;
using FermentWatch.Storage.Tests.Readings;

namespace FermentWatch.Storage.Tests.Children;

/// <summary>Appends until the disk refuses, says so, waits for a line, and appends what was refused again.</summary>
internal static class Filler
{
    internal const int GroupSize = 200;

    internal static async Task RunAsync(string path)
    {
        await using var store = ReadingStore.Open(path);
        int group = 0;
        try
        {
            for (; ; group++)
                await AppendAsync(store, group);
        }
        catch (IOException refused)
        {
            Console.Out.WriteLine($"refused {group} {refused.Message}");
        }

        Console.In.ReadLine();
        await AppendAsync(store, group);
        Console.Out.WriteLine($"stored {group}");
    }

    private static async Task AppendAsync(ReadingStore store, int group) =>
        await store.AppendAsync([.. Enumerable.Range(group * GroupSize, GroupSize).Select(index => Make.Timed(index, index))], default);
}
