using FermentWatch.Kinetics;
using SkiaSharp;

namespace FermentWatch.Service.Pages.Photos;

/// <summary>Makes a picture small, upright, and silent about where and by what it was taken: only its pixels are kept.</summary>
public static class SmallPhoto
{
    /// <summary>Longer side of what is kept, pixels.</summary>
    public const int LongestSide = 1280;

    /// <summary>Largest file that is taken, bytes.</summary>
    public const int LargestFile = 20 << 20;

    private const long MostPixels = 80_000_000;
    private const int JpegQuality = 80;

    /// <summary>The picture as a small JPEG, or why it cannot be used.</summary>
    /// <param name="file">JPEG, PNG or WebP as a phone sends it, at most <see cref="LargestFile"/> bytes.</param>
    public static (byte[]? Jpeg, Refusal? Refusal) Of(byte[] file)
    {
        using SKData data = SKData.CreateCopy(file);
        using SKCodec? codec = SKCodec.Create(data);
        if (codec is null || codec.Info.Width <= 0 || codec.Info.Height <= 0)
            return (null, new Refusal("photo", "a file that is no picture", "a JPEG, PNG or WebP picture would be right"));
        if ((long)codec.Info.Width * codec.Info.Height > MostPixels)
            return (null, new Refusal("photo", $"{codec.Info.Width} x {codec.Info.Height} pixels", $"a picture of at most {MostPixels / 1_000_000} million pixels would be right"));
        using SKBitmap? picture = SKBitmap.Decode(codec);
        if (picture is null)
            return (null, new Refusal("photo", "a picture that breaks off", "a whole picture would be right"));
        using SKBitmap upright = Upright(picture, codec.EncodedOrigin);
        using SKBitmap small = Shrunk(upright);
        using SKData jpeg = small.Encode(SKEncodedImageFormat.Jpeg, JpegQuality);
        return (jpeg.ToArray(), null);
    }

    private static SKBitmap Shrunk(SKBitmap picture)
    {
        double scale = Math.Min(1, (double)LongestSide / Math.Max(picture.Width, picture.Height));
        var info = new SKImageInfo(Math.Max(1, (int)Math.Round(picture.Width * scale)), Math.Max(1, (int)Math.Round(picture.Height * scale)));
        return picture.Resize(info, new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
    }

    /// <summary>Turns the pixels the way the camera was held: the mark that says so is not kept.</summary>
    private static SKBitmap Upright(SKBitmap picture, SKEncodedOrigin origin)
    {
        bool onItsSide = origin is SKEncodedOrigin.LeftTop or SKEncodedOrigin.RightTop or SKEncodedOrigin.RightBottom or SKEncodedOrigin.LeftBottom;
        (int width, int height) = onItsSide ? (picture.Height, picture.Width) : (picture.Width, picture.Height);
        var upright = new SKBitmap(new SKImageInfo(width, height));
        using var canvas = new SKCanvas(upright);
        canvas.Clear(SKColors.White);
        canvas.Concat(Turn(origin, width, height));
        canvas.DrawBitmap(picture, 0, 0, new SKSamplingOptions(SKFilterMode.Linear));
        return upright;
    }

    private static SKMatrix Turn(SKEncodedOrigin origin, float width, float height) => origin switch
    {
        SKEncodedOrigin.TopRight => new SKMatrix(-1, 0, width, 0, 1, 0, 0, 0, 1),
        SKEncodedOrigin.BottomRight => new SKMatrix(-1, 0, width, 0, -1, height, 0, 0, 1),
        SKEncodedOrigin.BottomLeft => new SKMatrix(1, 0, 0, 0, -1, height, 0, 0, 1),
        SKEncodedOrigin.LeftTop => new SKMatrix(0, 1, 0, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightTop => new SKMatrix(0, -1, width, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightBottom => new SKMatrix(0, -1, width, -1, 0, height, 0, 0, 1),
        SKEncodedOrigin.LeftBottom => new SKMatrix(0, 1, 0, -1, 0, height, 0, 0, 1),
        _ => SKMatrix.Identity,
    };
}
