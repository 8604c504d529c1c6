using System.Buffers.Binary;
using System.IO.Compression;

namespace FermentWatch.Service.Tests.Pages;

/// <summary>A PNG of one grey, which packs to nearly nothing (PNG, third edition, 2025).</summary>
internal static class PngBomb
{
    private const byte Grey = 0, TrueColourWithAlpha = 6;

    /// <param name="width">Pixels.</param>
    /// <param name="height">Pixels.</param>
    /// <param name="bits">Bits a sample: 1 as grey, 8 or 16 with colour and alpha.</param>
    /// <param name="interlaced">By Adam7.</param>
    /// <param name="whole">Whether the pixels are there.</param>
    public static byte[] Of(int width, int height, byte bits, bool interlaced = false, bool whole = true)
    {
        int bitsAPixel = bits == 1 ? 1 : 4 * bits;
        using var file = new MemoryStream();
        file.Write([0x89, .. "PNG\r\n"u8, 0x1A, (byte)'\n']);
        byte[] head = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(head, width);
        BinaryPrimitives.WriteInt32BigEndian(head.AsSpan(4), height);
        (head[8], head[9], head[12]) = (bits, bits == 1 ? Grey : TrueColourWithAlpha, interlaced ? (byte)1 : (byte)0);
        Chunk(file, "IHDR"u8, head);
        using (var packed = new MemoryStream())
        {
            using (var zlib = new ZLibStream(packed, CompressionLevel.SmallestSize, leaveOpen: true))
                foreach ((int lines, int pixels) in whole ? interlaced ? Passes(width, height) : [(height, width)] : [])
                    for (int line = 0; line < lines; line++)
                        zlib.Write(new byte[1 + (((long)pixels * bitsAPixel) + 7) / 8]);
            Chunk(file, "IDAT"u8, packed.ToArray());
        }
        Chunk(file, "IEND"u8, []);
        return file.ToArray();
    }

    /// <summary>Lines and pixels a line of the seven passes (Adam7).</summary>
    private static IEnumerable<(int Lines, int Pixels)> Passes(int width, int height)
    {
        foreach ((int x, int y, int stepX, int stepY) in ((int, int, int, int)[])[(0, 0, 8, 8), (4, 0, 8, 8), (0, 4, 4, 8), (2, 0, 4, 4),
            (0, 2, 2, 4), (1, 0, 2, 2), (0, 1, 1, 2)])
            yield return ((height - y + stepY - 1) / stepY, (width - x + stepX - 1) / stepX);
    }

    private static void Chunk(MemoryStream file, ReadOnlySpan<byte> kind, byte[] content)
    {
        Span<byte> number = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(number, content.Length);
        file.Write(number);
        file.Write(kind);
        file.Write(content);
        uint sum = 0xFFFFFFFF;
        foreach (byte each in (byte[])[.. kind, .. content])
        {
            sum ^= each;
            for (int bit = 0; bit < 8; bit++)
                sum = (sum & 1) == 1 ? (sum >> 1) ^ 0xEDB88320 : sum >> 1;
        }
        BinaryPrimitives.WriteUInt32BigEndian(number, ~sum);
        file.Write(number);
    }
}
