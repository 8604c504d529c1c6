using System.Globalization;
using System.Net;
using FermentWatch.TestKit;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Scenario.Tests;

/// <summary>One line of the scenario, carried out through the door it belongs to.</summary>
internal static class Entry
{
    public static async Task DoAsync(string[] words, IReadOnlyDictionary<string, Device> devices, KitchenClient mira)
    {
        string rest = words.Length > 3 ? words[3] : "";
        switch (words[1])
        {
            case "pack":
                await PackAsync(devices[words[2]], rest.Split(' '));
                break;
            case "bare":
                Assert.Equal((0, ""), await devices[words[2]].SendAsync(double.Parse(rest, CultureInfo.InvariantCulture)));
                break;
            case "give":
                await ExpectAsync(HttpStatusCode.NoContent, mira.PostAsync($"/api/v1/sensors/{words[2]}/place", new { where = rest }));
                break;
            case "put-up":
                await ExpectAsync(HttpStatusCode.Created, mira.PostAsync("/api/v1/jars", Fields(string.Join(' ', words.Skip(2)))));
                break;
            case "ph":
                string[] measured = rest.Split(' ');
                await ExpectAsync(HttpStatusCode.Created, mira.PostAsync($"/api/v1/jars/{words[2]}/ph",
                    new { ph = measured[0], method = measured[1], checked_in_buffer = measured[1] == "meter", pale_brine = true }));
                break;
            case "well":
                await ExpectAsync(HttpStatusCode.OK, mira.PostAsync("/api/v1/round/today/all-well",
                    new { except = words[2] == "-" ? [] : words[2].Split(',').Select(number => int.Parse(number, CultureInfo.InvariantCulture)),
                    opened = false }));
                break;
            default:
                string[] said = rest.Split(' ', 2);
                await ExpectAsync(HttpStatusCode.OK, mira.PostAsync($"/api/v1/round/today/{words[1]}",
                    new { jar = int.Parse(words[2], CultureInfo.InvariantCulture), what = said[0], note = said.Length > 1 ? said[1] : null }));
                break;
        }
    }

    private static async Task PackAsync(Device device, string[] pack)
    {
        Duration step = Duration.FromMinutes(int.Parse(pack[0], CultureInfo.InvariantCulture));
        Instant first = InstantPattern.ExtendedIso.Parse(pack[1]).GetValueOrThrow();
        Assert.Equal((0, ""),
            await device.SendPackAsync(pack.Skip(2).Select((value, i) => (first + (step * i), double.Parse(value, CultureInfo.InvariantCulture)))));
    }

    private static Dictionary<string, string> Fields(string text) =>
        text.Split(';').Select(field => field.Split('=', 2)).ToDictionary(field => field[0], field => field[1]);

    private static async Task ExpectAsync(HttpStatusCode expected, Task<(HttpStatusCode Status, string Body)> answer)
    {
        (HttpStatusCode status, string body) = await answer;
        Assert.True(status == expected, body);
    }
}
