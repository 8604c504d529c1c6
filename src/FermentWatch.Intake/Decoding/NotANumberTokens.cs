using System.Buffers;

namespace FermentWatch.Intake.Decoding;

/// <summary>The words nan, inf and infinity where a JSON value belongs, with any sign and in any case.</summary>
public static class NotANumberTokens
{
    private const int LongestWord = 8;

    /// <summary>A copy in which each such word outside strings is null; null if there is none.</summary>
    public static byte[]? ReplaceWithNull(ReadOnlySpan<byte> document)
    {
        ArrayBufferWriter<byte>? output = null;
        bool inString = false;
        int copied = 0;
        for (int i = 0; i < document.Length;)
        {
            int length = inString || !MayStartWord(document[i]) ? 0 : WordLength(document[i..]);
            if (length > 0 && StartsValue(document, i))
            {
                output ??= new ArrayBufferWriter<byte>(document.Length + 16);
                output.Write(document[copied..i]);
                output.Write("null"u8);
                i += length;
                copied = i;
                continue;
            }
            if (document[i] == (byte)'"')
                inString = !inString;
            i += inString && document[i] == (byte)'\\' ? 2 : 1;
        }
        if (output is null)
            return null;
        output.Write(document[copied..]);
        return output.WrittenSpan.ToArray();
    }

    private static bool MayStartWord(byte first) => first is (byte)'n' or (byte)'N' or (byte)'i' or (byte)'I' or (byte)'-' or (byte)'+';

    private static bool StartsValue(ReadOnlySpan<byte> document, int index)
    {
        ReadOnlySpan<byte> before = document[..index].TrimEnd(" \t\r\n"u8);
        return before.IsEmpty || before[^1] is (byte)':' or (byte)',' or (byte)'[';
    }

    private static int WordLength(ReadOnlySpan<byte> at)
    {
        int sign = at[0] is (byte)'-' or (byte)'+' ? 1 : 0;
        int letters = 0;
        while (letters <= LongestWord && sign + letters < at.Length && char.IsAsciiLetter((char)at[sign + letters]))
            letters++;
        Span<char> word = stackalloc char[LongestWord];
        if (letters is < 3 or > LongestWord)
            return 0;
        for (int i = 0; i < letters; i++)
            word[i] = char.ToLowerInvariant((char)at[sign + i]);
        return word[..letters] is "nan" or "inf" or "infinity" ? sign + letters : 0;
    }
}
