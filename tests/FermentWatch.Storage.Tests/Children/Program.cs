using FermentWatch.Storage.Readings;
using FermentWatch.Storage.Records;
using FermentWatch.Storage.Tests.Archives;

namespace FermentWatch.Storage.Tests.Children;

/// <summary>Entry of the processes that the tests start in order to kill or starve them.</summary>
internal static class Program
{
    private static async Task<int> Main(string[] arguments)
    {
        switch (arguments)
        {
            case ["append", var path, .. var starts]:
                await Appender.RunAsync(path, [.. starts.Select(int.Parse)]);
                return 0;
            case ["create", "readings", var path]:
                await using (ReadingStore.Open(path))
                    return 0;
            case ["create", "records", var path]:
                RecordsDatabase.CreateOrUpgrade(path, TimeProvider.System);
                return 0;
            case ["import", var zip, var folder]:
                return Archived.Import(zip, folder).Count == 0 ? 0 : 1;
            case ["fill", var path]:
                await Filler.RunAsync(path);
                return 0;
            default:
                Console.Error.WriteLine("append PATH START..., create readings PATH, create records PATH, import ZIP FOLDER or fill PATH");
                return 2;
        }
    }
}
