using System.IO.Compression;
using System.Runtime.InteropServices;
using System.Text.Json;
using FermentWatch.Kinetics.Forecasting;

namespace FermentWatch.Storage.Records.Derived;

/// <summary>
/// A forecast in few bytes: its course column by column as doubles, which come back to the last bit, and the rest as JSON before it;
/// deflated. As JSON alone a forecast of a month-old jar takes some 90 kB.
/// </summary>
internal static class ForecastCodec
{
    private const byte Form = 1;

    private static readonly Func<CoursePoint, double>[] Columns =
    [
        point => point.Day, point => point.JarCelsius, point => point.SournessP50,
        point => point.Ph.P10, point => point.Ph.P50, point => point.Ph.P90,
        point => point.CentrePh.P10, point => point.CentrePh.P50, point => point.CentrePh.P90,
        point => point.AcidityPercentLactic.P10, point => point.AcidityPercentLactic.P50, point => point.AcidityPercentLactic.P90,
    ];

    internal static byte[] Write(Forecast forecast)
    {
        byte[] rest = JsonSerializer.SerializeToUtf8Bytes(forecast with { Course = [] });
        double[] course = [.. Columns.SelectMany(column => forecast.Course.Select(column))];
        using var bytes = new MemoryStream();
        bytes.WriteByte(Form);
        using (var deflate = new DeflateStream(bytes, CompressionLevel.Fastest, leaveOpen: true))
        using (var writer = new BinaryWriter(deflate))
        {
            writer.Write(rest.Length);
            writer.Write(rest);
            writer.Write(forecast.Course.Count);
            writer.Write(Planes(MemoryMarshal.AsBytes<double>(course)));
        }
        return bytes.ToArray();
    }

    /// <summary>The forecast; null where it was written in another form.</summary>
    internal static Forecast? Read(byte[] content)
    {
        if (content.Length == 0 || content[0] != Form)
            return null;
        try
        {
            using var reader = new BinaryReader(new DeflateStream(new MemoryStream(content, 1, content.Length - 1), CompressionMode.Decompress));
            Forecast rest = JsonSerializer.Deserialize<Forecast>(reader.ReadBytes(reader.ReadInt32()))!;
            int points = reader.ReadInt32();
            byte[] planes = reader.ReadBytes(checked(points * Columns.Length * sizeof(double)));
            return planes.Length == points * Columns.Length * sizeof(double)
                ? rest with { Course = Course(MemoryMarshal.Cast<byte, double>(Doubles(planes)), points) } : null;
        }
        catch (Exception trouble) when (trouble is JsonException or InvalidDataException or EndOfStreamException or OverflowException
            or ArgumentException)
        {
            return null;
        }
    }

    private static CoursePoint[] Course(ReadOnlySpan<double> values, int points)
    {
        var course = new CoursePoint[points];
        for (int i = 0; i < points; i++)
        {
            ReadOnlySpan<double> from = values[i..];
            double At(ReadOnlySpan<double> column, int which) => column[which * points];
            course[i] = new CoursePoint(At(from, 0), At(from, 1),
                new Quantiles(At(from, 3), At(from, 4), At(from, 5)), new Quantiles(At(from, 9), At(from, 10), At(from, 11)), At(from, 2),
                new Quantiles(At(from, 6), At(from, 7), At(from, 8)));
        }
        return course;
    }

    /// <summary>The first bytes of all doubles, then the second and so on: neighbours share their exponents, which deflate then finds.</summary>
    private static byte[] Planes(ReadOnlySpan<byte> doubles)
    {
        byte[] planes = new byte[doubles.Length];
        int count = doubles.Length / sizeof(double);
        for (int i = 0; i < doubles.Length; i++)
            planes[(i % sizeof(double) * count) + (i / sizeof(double))] = doubles[i];
        return planes;
    }

    private static byte[] Doubles(ReadOnlySpan<byte> planes)
    {
        byte[] doubles = new byte[planes.Length];
        int count = planes.Length / sizeof(double);
        for (int i = 0; i < doubles.Length; i++)
            doubles[i] = planes[(i % sizeof(double) * count) + (i / sizeof(double))];
        return doubles;
    }
}
