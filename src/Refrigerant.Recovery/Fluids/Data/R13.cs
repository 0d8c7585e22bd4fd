using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-13, chlorotrifluoromethane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R13
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-13",
        Name = "chlorotrifluoromethane",
        CasNumber = "75-72-9",
        Source = "B. Platzer and A. Polt and G. Maurer, (1990), Thermophysical Properties of Refrigerants, "
            + "Springer-Verlag, doi:10.1007/978-3-662-02608-3",
        MolarMass = 0.104459,
        GasConstant = 8.31451,
        ReducingTemperature = 301.88,
        ReducingMolarDensity = 5570.98,
        CriticalTemperature = 301.88,
        CriticalPressure = 3879000,
        CriticalMolarDensity = 5580,
        AcentricFactor = 0.174586327798,
        MinimumTemperature = 92,
        MaximumTemperature = 450,
        MaximumPressure = 50000000,
        IdealGas = new IdealHelmholtz(
            logTau: 1.4766458,
            tauLogTau: 0,
            powers: new double[,]
            {
                { -2.72813016286, -1 },
                { -0.33332171296315066, -2 },
                { 0.1967265632453634, -3 },
                { -0.026243318495781393, -4 },
            },
            planckEinstein: new double[0, 2]),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 0.761143010172, 1, 0, 0 },
                { -1.94465098795, 1, 1, 0 },
                { 0.940938700406, 1, 2, 0 },
                { -1.08107050239, 1, 3, 0 },
                { 0.117501564976, 1, 4, 0 },
                { 0.228305167217, 2, 0, 0 },
                { -0.403338888789, 2, 1, 0 },
                { 0.37558571342, 2, 2, 0 },
                { -0.0617543677315, 3, 0, 0 },
                { 0.170326226881, 3, 1, 0 },
                { 0.0536612457231, 4, 0, 0 },
                { -0.151603010301, 4, 1, 0 },
                { 0.0252033265074, 5, 1, 0 },
                { -0.62834655992, 0, 3, 0 },
                { 0.792797111341, 0, 4, 0 },
                { -0.134038992692, 0, 5, 0 },
            },
            Exponential = new double[,]
            {
                { -0.0399863840975, 2, 3, 0.98230055, 2 },
                { 0.436410910529, 2, 4, 0.98230055, 2 },
                { -0.448724904991, 2, 5, 0.98230055, 2 },
                { 0.62834655992, 0, 3, 0.98230055, 2 },
                { -0.792797111341, 0, 4, 0.98230055, 2 },
                { 0.134038992692, 0, 5, 0.98230055, 2 },
            },
        },
        SaturationViscosity = new double[,]
        {
            { 201, 0.00027078, 9.6636E-06 },
            { 209.35, 0.00024018, 1.0077E-05 },
            { 217.7, 0.00021369, 1.0503E-05 },
            { 226.04, 0.00019055, 1.095E-05 },
            { 234.39, 0.00017008, 1.1427E-05 },
            { 242.74, 0.00015179, 1.1948E-05 },
            { 251.09, 0.00013523, 1.2532E-05 },
            { 259.43, 0.00012004, 1.3209E-05 },
            { 267.78, 0.00010582, 1.4028E-05 },
            { 276.13, 9.2181E-05, 1.5075E-05 },
            { 284.48, 7.8616E-05, 1.6527E-05 },
            { 292.82, 6.4147E-05, 1.8859E-05 },
        },
    };
}
