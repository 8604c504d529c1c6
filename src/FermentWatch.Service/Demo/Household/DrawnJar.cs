using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using SkiaSharp;

namespace FermentWatch.Service.Demo.Household;

/// <summary>The photos of the invented household: drawings of a jar on a counter, with what is seen of it.</summary>
internal sealed class DrawnJar : IDisposable
{
    private const int Side = 640, JpegQuality = 82, Shreds = 900, Bubbles = 46;

    private static readonly SKRect Glass = new(190, 120, 450, 560);
    private static readonly SKColor Wall = new(0xE9, 0xDF, 0xCB), Counter = new(0xB7, 0x8B, 0x5E), Lid = new(0x8A, 0x92, 0x96),
        Ink = new(0x2C, 0x28, 0x22);

    private readonly SKBitmap _picture = new(Side, Side);
    private readonly SKRoundRect _glass = new(Glass, 26);
    private readonly SKCanvas _canvas;
    private readonly Random _random;
    private readonly SKColor[] _shreds;

    private DrawnJar(Jar jar, IReadOnlyList<uint> colours)
    {
        _canvas = new SKCanvas(_picture);
        _random = new Random(jar.Number);
        _shreds = [.. colours.Select(colour => new SKColor(colour))];
    }

    /// <summary>A JPEG of it.</summary>
    /// <param name="jar">The jar; drawn alike each time.</param>
    /// <param name="colours">Of its shreds, as ARGB; the brine takes the first.</param>
    /// <param name="day">Days since packing: brine clouds, gas comes and goes.</param>
    /// <param name="seen">What is wrong with it; null where nothing is.</param>
    public static byte[] Photo(Jar jar, IReadOnlyList<uint> colours, double day, SightingKind? seen)
    {
        using var drawn = new DrawnJar(jar, colours);
        drawn.Draw(day, seen);
        using SKData jpeg = drawn._picture.Encode(SKEncodedImageFormat.Jpeg, JpegQuality);
        return jpeg.ToArray();
    }

    public void Dispose()
    {
        _canvas.Dispose();
        _glass.Dispose();
        _picture.Dispose();
    }

    private void Draw(double day, SightingKind? seen)
    {
        Fill(new SKRect(0, 0, Side, 500), Wall);
        Fill(new SKRect(0, 500, Side, Side), Counter);
        float solids = Glass.Top + 84, brine = seen == SightingKind.BrineLow ? solids + 70 : solids - 26;
        _canvas.Save();
        _canvas.ClipRoundRect(_glass);
        Fill(new SKRect(Glass.Left, brine, Glass.Right, Glass.Bottom), Brine(day));
        _canvas.Restore();
        Pack(seen == SightingKind.PiecesUp ? brine - 24 : solids);
        if (day is > 1 and < 12)
            Dots(Bubbles, brine, Glass.Bottom, 2, 5, new SKColor(255, 255, 255, 170));
        OnTop(seen, brine);
        Outline();
    }

    /// <summary>What lies or grows on the brine.</summary>
    private void OnTop(SightingKind? seen, float brine)
    {
        if (seen == SightingKind.Film)
            Dots(40, brine - 6, brine + 8, 10, 26, new SKColor(250, 248, 240, 200));
        else if (seen == SightingKind.FuzzOrUnsure)
            Dots(14, brine - 20, brine + 4, 10, 24, new SKColor(96, 116, 92, 220));
        else if (seen == SightingKind.Slime)
            Dots(26, brine - 4, brine + 60, 14, 34, new SKColor(214, 206, 160, 120));
    }

    /// <summary>Shreds, packed from the bottom up to a height.</summary>
    private void Pack(float top)
    {
        using var pen = new SKPaint { IsAntialias = true, Style = SKPaintStyle.Stroke, StrokeWidth = 5, StrokeCap = SKStrokeCap.Round };
        _canvas.Save();
        _canvas.ClipRoundRect(_glass);
        for (int i = 0; i < Shreds; i++)
        {
            SKPoint at = Within(Glass.Left, top, Glass.Right, Glass.Bottom);
            pen.Color = _shreds[_random.Next(_shreds.Length)];
            double turn = _random.NextDouble() * Math.PI, half = 10 + (22 * _random.NextDouble());
            var way = new SKPoint((float)(half * Math.Cos(turn)), (float)(half * Math.Sin(turn) * 0.5));
            _canvas.DrawLine(at - way, at + way, pen);
        }
        _canvas.Restore();
    }

    private void Dots(int count, float top, float bottom, float least, float most, SKColor colour)
    {
        using var pen = new SKPaint { IsAntialias = true, Color = colour };
        _canvas.Save();
        _canvas.ClipRoundRect(_glass);
        for (int i = 0; i < count; i++)
            _canvas.DrawCircle(Within(Glass.Left, top, Glass.Right, bottom), least + ((most - least) * _random.NextSingle()), pen);
        _canvas.Restore();
    }

    private void Outline()
    {
        using var pen = new SKPaint { IsAntialias = true, Style = SKPaintStyle.Stroke, StrokeWidth = 6, Color = Ink };
        using var shine = new SKPaint { IsAntialias = true, Style = SKPaintStyle.Stroke, StrokeWidth = 14, StrokeCap = SKStrokeCap.Round,
            Color = new SKColor(255, 255, 255, 110) };
        _canvas.DrawRoundRect(_glass, pen);
        _canvas.DrawLine(Glass.Left + 28, Glass.Top + 70, Glass.Left + 28, Glass.Bottom - 70, shine);
        var lid = new SKRect(Glass.Left + 18, Glass.Top - 44, Glass.Right - 18, Glass.Top);
        Fill(lid, Lid);
        _canvas.DrawRect(lid, pen);
    }

    private SKPoint Within(float left, float top, float right, float bottom) =>
        new(left + ((right - left) * _random.NextSingle()), top + ((bottom - top) * _random.NextSingle()));

    private void Fill(SKRect where, SKColor colour)
    {
        using var pen = new SKPaint { Color = colour };
        _canvas.DrawRect(where, pen);
    }

    /// <summary>Brine clouds within a week.</summary>
    private SKColor Brine(double day) => _shreds[0].WithAlpha((byte)(60 + (8 * Math.Clamp(day, 0, 8))));
}
