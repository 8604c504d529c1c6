using System.Reflection;
using Microsoft.Extensions.Logging;

namespace FermentWatch.Service.Tests.Architecture;

public class LogIdTests
{
    [Fact]
    public void LogMessages_OfAllRooms_HaveIdsOfTheirOwn()
    {
        Assembly service = typeof(FermentWatch.Service.Settings.ServiceSettings).Assembly;
        var ids = service.GetReferencedAssemblies().Where(name => name.Name!.StartsWith("FermentWatch.", StringComparison.Ordinal))
            .Select(Assembly.Load).Append(service)
            .SelectMany(room => room.GetTypes())
            .SelectMany(type => type.GetMethods(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly))
            .Select(method => (Method: method, Message: method.GetCustomAttribute<LoggerMessageAttribute>())).Where(each => each.Message is not null)
                .ToList();
        Assert.True(ids.Count > 20, $"{ids.Count} messages");
        Assert.Empty(ids.GroupBy(each => each.Message!.EventId).Where(each => each.Count() > 1)
            .Select(each => $"{each.Key}: {string.Join(", ", each.Select(one => one.Method.Name))}"));
    }
}
