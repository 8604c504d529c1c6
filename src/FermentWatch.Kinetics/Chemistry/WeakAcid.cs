namespace FermentWatch.Kinetics.Chemistry;

/// <summary>
/// Mean negative charge of a weak acid and the variance of that charge over its forms. The variance is the slope of the
/// charge against -ln H: no derivative has to be written out.
/// </summary>
internal static class WeakAcid
{
    public static (double Charge, double Variance) One(double k1, double h)
    {
        double charge = k1 / (k1 + h);
        return (charge, charge * (1 - charge));
    }

    public static (double Charge, double Variance) Two(double k1, double k2, double h)
    {
        double one = k1 * h;
        double two = k1 * k2;
        double all = (h * h) + one + two;
        double charge = (one + (2 * two)) / all;
        return (charge, ((one + (4 * two)) / all) - (charge * charge));
    }

    public static (double Charge, double Variance) Three(double k1, double k2, double k3, double h)
    {
        double one = k1 * h * h;
        double two = k1 * k2 * h;
        double three = k1 * k2 * k3;
        double all = (h * h * h) + one + two + three;
        double charge = (one + (2 * two) + (3 * three)) / all;
        return (charge, ((one + (4 * two) + (9 * three)) / all) - (charge * charge));
    }
}
