using System.Text;
using FermentWatch.Kinetics;
using FermentWatch.Web.Pages.Photos;
using SkiaSharp;

namespace FermentWatch.Service.Tests.Pages;

public class SmallPhotoTests
{
    private const byte HeldUpright = 1, HeldSideways = 6;

    [Fact]
    public void Of_PhoneCameraPicture_IsSmallAndSaysNothingOfWhereItWasTaken()
    {
        byte[] taken = WithExif(Picture(3000, 2000), HeldUpright);
        Assert.Contains("N48.2082", Encoding.Latin1.GetString(taken), StringComparison.Ordinal);

        (byte[]? jpeg, Refusal? refusal) = SmallPhoto.Of(new MemoryStream(taken));
        Assert.Null(refusal);
        string kept = Encoding.Latin1.GetString(jpeg!);
        Assert.DoesNotContain("Exif", kept, StringComparison.Ordinal);
        Assert.DoesNotContain("N48.2082", kept, StringComparison.Ordinal);
        using SKBitmap small = SKBitmap.Decode(jpeg);
        Assert.Equal((1280, 853), (small.Width, small.Height));
    }

    [Fact]
    public void Of_PictureHeldSideways_IsTurnedUpright()
    {
        // Red on the left as the sensor saw it; turned a quarter to the right, red is on top.
        (byte[]? jpeg, _) = SmallPhoto.Of(new MemoryStream(WithExif(Picture(400, 200), HeldSideways)));
        using SKBitmap upright = SKBitmap.Decode(jpeg);
        Assert.Equal((200, 400), (upright.Width, upright.Height));
        Assert.True(upright.GetPixel(100, 50).Red > 200 && upright.GetPixel(100, 350).Blue > 200);
    }

    [Fact]
    public void Of_SmallPicture_KeepsItsSize()
    {
        (byte[]? jpeg, _) = SmallPhoto.Of(new MemoryStream(Picture(320, 240)));
        using SKBitmap kept = SKBitmap.Decode(jpeg);
        Assert.Equal((320, 240), (kept.Width, kept.Height));
    }

    [Theory]
    [InlineData("")]
    [InlineData("%PDF-1.7 a recipe")]
    public void Of_NoPicture_IsRefusedWithWhatWouldBeRight(string file)
    {
        (byte[]? jpeg, Refusal? refusal) = SmallPhoto.Of(new MemoryStream(Encoding.ASCII.GetBytes(file)));
        Assert.Null(jpeg);
        Assert.Equal("a JPEG, PNG or WebP picture would be right", refusal!.WouldBeRight);
    }

    [Fact]
    public void Of_JpegOf108MillionPixelsAsACameraWritesIt_IsDecodedSmall()
    {
        (byte[]? jpeg, Refusal? refusal) = SmallPhoto.Of(new MemoryStream(Picture(12_000, 9_000)));
        Assert.Null(refusal);
        using SKBitmap kept = SKBitmap.Decode(jpeg);
        Assert.Equal((1280, 960), (kept.Width, kept.Height));
    }

    [Theory]
    [MemberData(nameof(Bombs))]
    public void Of_SmallFileOfManyPixels_IsRefusedBeforeAnyIsDecoded(string kind, byte[] bomb)
    {
        Assert.InRange(bomb.Length, 1, 4 << 20);
        long before = Environment.WorkingSet;
        (byte[]? jpeg, Refusal? refusal) = SmallPhoto.Of(new MemoryStream(bomb));
        Assert.Null(jpeg);
        Assert.Contains("picture", refusal!.WouldBeRight, StringComparison.Ordinal);
        Assert.True(Environment.WorkingSet - before < 64 << 20, $"{kind} took {(Environment.WorkingSet - before) >> 20} MB");
    }

    public static TheoryData<string, byte[]> Bombs() => new()
    {
        { "a PNG in one bit", PngBomb.Of(8944, 8944, bits: 1) },
        { "an interlaced PNG in 16 bits", PngBomb.Of(4000, 4000, bits: 16, interlaced: true, whole: false) },
        { "a PNG of a single line", PngBomb.Of(20_000_000, 1, bits: 1) },
        { "a WebP", Encoded(4000, 4000, SKEncodedImageFormat.Webp) },
        { "a progressive JPEG", Progressive(Encoded(5000, 5000, SKEncodedImageFormat.Jpeg)) },
        { "a GIF", [.. "GIF89a"u8, 0xFF, 0xFF, 0xFF, 0xFF, 0x80, 0, 0, 0, 0, 0, 255, 255, 255, 0x2C, 0, 0, 0, 0, 0xFF, 0xFF, 0xFF, 0xFF, 0, 2, 2,
        0x44, 1, 0, 0x3B] },
    };

    [Theory]
    [InlineData(SKEncodedImageFormat.Png)]
    [InlineData(SKEncodedImageFormat.Webp)]
    [InlineData(SKEncodedImageFormat.Jpeg)]
    public void Of_PictureThatBreaksOff_IsRefused(SKEncodedImageFormat format)
    {
        byte[] whole = Encoded(300, 200, format);
        (byte[]? jpeg, Refusal? refusal) = SmallPhoto.Of(new MemoryStream(whole[..(whole.Length * 2 / 3)]));
        Assert.Null(jpeg);
        Assert.NotNull(refusal);
    }

    private static byte[] Encoded(int width, int height, SKEncodedImageFormat format)
    {
        using var bitmap = new SKBitmap(width, height);
        bitmap.Erase(SKColors.Coral);
        using SKData data = bitmap.Encode(format, 90);
        return data.ToArray();
    }

    /// <summary>Says of a JPEG that it comes in several scans: its frame is marked so (ITU-T T.81, table B.1).</summary>
    private static byte[] Progressive(byte[] jpeg)
    {
        int frame = jpeg.AsSpan().IndexOf((ReadOnlySpan<byte>)[0xFF, 0xC0]);
        jpeg[frame + 1] = 0xC2;
        return jpeg;
    }

    private static byte[] Picture(int width, int height)
    {
        using var bitmap = new SKBitmap(width, height);
        using (var canvas = new SKCanvas(bitmap))
        using (var red = new SKPaint { Color = SKColors.Red })
        {
            canvas.Clear(SKColors.Blue);
            canvas.DrawRect(0, 0, width / 2f, height, red);
        }
        using SKData jpeg = bitmap.Encode(SKEncodedImageFormat.Jpeg, 90);
        return jpeg.ToArray();
    }

    /// <summary>Puts an APP1 segment after the start of a JPEG: a TIFF header with one entry, the orientation, and a place in clear text.</summary>
    private static byte[] WithExif(byte[] jpeg, byte orientation)
    {
        byte[] place = Encoding.ASCII.GetBytes("N48.2082");
        byte[] exif =
        [
            .. "Exif\0\0"u8, .. "MM"u8, 0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0, 0, 0, 0, 0, .. place,
        ];
        int length = exif.Length + 2;
        return [jpeg[0], jpeg[1], 0xFF, 0xE1, (byte)(length >> 8), (byte)length, .. exif, .. jpeg[2..]];
    }
}
