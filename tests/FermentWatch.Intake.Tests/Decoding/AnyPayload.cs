using System.Text;
using CsCheck;

namespace FermentWatch.Intake.Tests.Decoding;

/// <summary>Payloads from random bytes to nearly right documents, as a broken device or a stranger might send them.</summary>
internal static class AnyPayload
{
    private static readonly string[] _pieces =
    [
        "[", "]", "{", "}", ",", ":", "\"", "\\", "\"n\":", "\"bn\":", "\"u\":", "\"bu\":", "\"v\":", "\"bv\":", "\"t\":", "\"bt\":", "\"vs\":",
        "\"bver\":", "\"s\":", "\"x_\":", "\"Cel\"", "\"degF\"", "\"pH\"", "\"%RH\"", "\"mV\"", "\"temperature\"", "\"a/b:c\"", "\"\\ud800\"",
        "\"\\ud800\":", "{\"\\udfff\":1}", "\\udfff", "\\u0074",
        "nan", "NaN", "-inf", "Infinity", "null", "true", "1e999", "-1e-999", "21.5", "-127", "85", "268435456", "1790841600", "1e300",
        " ", "\n", "\0", "é", "[{\"n\":\"cellar\",\"u\":\"Cel\",\"v\":21.5}]", "[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[",
    ];

    private static readonly byte[] _pack =
        """[{"bn":"cellar:","n":"temperature","bt":1790841600,"bu":"Cel","v":17.5},{"n":"humidity","u":"%RH","t":900,"v":71.25}]"""u8.ToArray();

    private static readonly Gen<byte[]> _document =
        Gen.Int[0, _pieces.Length - 1].Select(index => _pieces[index]).Array[0, 40].Select(pieces => Encoding.UTF8.GetBytes(string.Concat(pieces)));

    /// <summary>A well-formed pack with one place spoilt.</summary>
    private static readonly Gen<byte[]> _spoilt =
        Gen.Select(Gen.Int[0, _pack.Length - 1], Gen.Byte, Gen.Int[1, 4]).Select((at, value, count) =>
        {
            byte[] spoilt = [.. _pack];
            for (int i = at; i < Math.Min(at + count, spoilt.Length); i++)
                spoilt[i] = (byte)(value + i - at & 0xFF);
            return spoilt;
        });

    public static Gen<byte[]> Bytes { get; } = Gen.OneOf(Gen.Byte.Array[0, 64], _document, _spoilt);
}
