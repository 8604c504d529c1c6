using System.Globalization;
using System.Text;
using NodaTime;

namespace FermentWatch.Benchmarks.History;

/// <summary>Invented temperatures of some sensors, one a minute: seasons, days and a little noise, the same each time they are asked for.</summary>
internal sealed record MinuteReadings(int Sensors, int Days)
{
    private const int MinutesADay = 1440;
    private const int SamplesALine = 50_000;

    public Instant From { get; } = Instant.FromUtc(2023, 11, 1, 0, 0);

    public int OfOne => Days * MinutesADay;

    public long Count => (long)Sensors * OfOne;

    public long UnixMilliseconds(int minute) => From.ToUnixTimeMilliseconds() + (minute * 60_000L);

    /// <summary>Celsius, in hundredths as sensors send it.</summary>
    public static double Celsius(int sensor, int minute)
    {
        double days = minute / (double)MinutesADay;
        uint noise = unchecked(((uint)((minute * 31) + sensor) * 2_654_435_761u) >> 20);
        return Math.Round(14 + (sensor * 0.3) + (5 * Math.Sin(days / 58)) + (1.5 * Math.Sin(days * 6.2832)) + (noise / 16_384.0), 2);
    }

    /// <summary>Sends all of it to a victoria-metrics.</summary>
    public async Task SendAsync(Uri address)
    {
        using var http = new HttpClient { BaseAddress = address, Timeout = TimeSpan.FromMinutes(5) };
        for (int sensor = 0; sensor < Sensors; sensor++)
            for (int first = 0; first < OfOne; first += SamplesALine)
                (await http.PostAsync(new Uri("/api/v1/import", UriKind.Relative),
                    new StringContent(Line(sensor, first, Math.Min(OfOne, first + SamplesALine)))))
                    .EnsureSuccessStatusCode();
        await http.GetStringAsync(new Uri("/internal/force_flush", UriKind.Relative));
        // What it does by itself in its first hours; without it the reference would be asked at its worst.
        await http.GetStringAsync(new Uri("/internal/force_merge", UriKind.Relative));
    }

    private string Line(int sensor, int first, int end)
    {
        var values = new StringBuilder();
        var times = new StringBuilder();
        for (int minute = first; minute < end; minute++)
        {
            values.Append(minute == first ? "" : ",").Append(CultureInfo.InvariantCulture, $"{Celsius(sensor, minute)}");
            times.Append(minute == first ? "" : ",").Append(UnixMilliseconds(minute));
        }
        return $"{{\"metric\":{{\"__name__\":\"celsius\",\"sensor\":\"s{sensor}\"}},\"values\":[{values}],\"timestamps\":[{times}]}}\n";
    }
}
