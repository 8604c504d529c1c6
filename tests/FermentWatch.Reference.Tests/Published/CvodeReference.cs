using System.Diagnostics;
using System.Runtime.InteropServices;

namespace FermentWatch.Reference.Tests.Published;

/// <summary>The same equations solved by SUNDIALS CVODE: the C source beside the tests is compiled once, when first asked for.</summary>
internal sealed class CvodeReference
{
    private static readonly Lazy<CvodeReference> Built = new(() => new CvodeReference());

    private readonly Solver _solve;

    private CvodeReference()
    {
        string folder = Directory.CreateTempSubdirectory("fermentwatch-cvode-").FullName;
        string source = Path.Combine(folder, "reference.c");
        string library = Path.Combine(folder, "libreference.so");
        using (Stream text = typeof(CvodeReference).Assembly.GetManifestResourceStream("reference.c")!)
        using (FileStream file = File.Create(source))
            text.CopyTo(file);
        using Process compiler = Process.Start(new ProcessStartInfo("cc",
            ["-O3", "-march=native", "-shared", "-fPIC", "-o", library, source, "-lsundials_cvode", "-lsundials_nvecserial",
            "-lsundials_sunmatrixdense", "-lsundials_sunlinsoldense", "-lsundials_sunnonlinsolfixedpoint", "-lm"])
        { RedirectStandardError = true })!;
        string errors = compiler.StandardError.ReadToEnd();
        compiler.WaitForExit();
        if (compiler.ExitCode != 0)
            throw new InvalidOperationException($"The CVODE reference could not be built; it needs gcc and Debian's libsundials-dev. {errors}");
        _solve = Marshal.GetDelegateForFunctionPointer<Solver>(NativeLibrary.GetExport(NativeLibrary.Load(library), "fw_solve"));
        Directory.Delete(folder, recursive: true);
    }

    private delegate int Solver(double[] constants, double[] celsius, double[] spread, int nodes, double[] hours, int times,
        double relative, double absolute, int adams, double[] ph, double[] acidity, out nint calls);

    /// <summary>The library, built on first use.</summary>
    public static CvodeReference Instance => Built.Value;

    /// <summary>Solves one member.</summary>
    public (double[] Ph, double[] Acidity, long Calls) Solve(double[] constants, double[] celsius, double[] spread, double[] hours, double tolerance,
        bool adams = false)
    {
        double[] ph = new double[hours.Length];
        double[] acidity = new double[hours.Length];
        int flag = _solve(constants, celsius, spread, celsius.Length, hours, hours.Length, tolerance, tolerance * 1e-2, adams ? 1
            : 0, ph, acidity, out nint calls);
        if (flag != 0)
            throw new InvalidOperationException($"CVODE stopped with {flag}.");
        return (ph, acidity, calls);
    }
}
