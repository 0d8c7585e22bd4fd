using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-1336mzz(E), trans-1,1,1,4,4,4-hexafluoro-2-butene. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R1336mzzE
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-1336mzz(E)",
        Name = "trans-1,1,1,4,4,4-hexafluoro-2-butene",
        CasNumber = "66711-86-2",
        Source = "Ryo Akasaka and Marcia L. Huber and Luke Simoni and Eric W. Lemmon, (2023), A Helmholtz Energy "
            + "Equation of State for trans-1,1,1,4,4,4-Hexafluoro-2-butene [R-1336mzz(E)], International Journal of "
            + "Thermophysics, vol. 44, 1003-1013, doi:10.1007/s10765-022-03143-5",
        MolarMass = 0.1640491,
        GasConstant = 8.314462618,
        ReducingTemperature = 403.53,
        ReducingMolarDensity = 3129,
        CriticalTemperature = 403.53,
        CriticalPressure = 2779002.2154927077,
        CriticalMolarDensity = 3129,
        AcentricFactor = 0.4127686952181142,
        MinimumTemperature = 200.15,
        MaximumTemperature = 410,
        MaximumPressure = 5700000,
        IdealGas = new IdealHelmholtz(
            logTau: 3,
            tauLogTau: 0,
            powers: new double[,]
            {
                { -17.583859885194016, 0 },
                { 11.524417012948918, 1 },
            },
            planckEinstein: new double[,]
            {
                { 15.891, 1.3629717740936238 },
                { 14.143, 8.609025351275 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 0.08297005, 4, 1, 0 },
                { 1.1213658, 1, 0.117, 0 },
                { -2.0279038680756, 1, 1, 0 },
                { -0.3486706213113, 2, 1, 0 },
                { 0.13227952, 3, 0.413, 0 },
                { -1.3751844, 1, 2.44, 2 },
                { -1.3939029, 3, 2.51, 2 },
                { 0.11190839, 2, 0.535, 1 },
                { -0.90635088, 2, 1.927, 2 },
                { -0.050014594, 7, 1.186, 1 },
            },
            Gaussian = new double[,]
            {
                { 1.7953748, 1, 0.876, 1.234, 1.237, 1.21, 1.23 },
                { 2.0579712, 1, 1.23, 1.34, 0.384, 2, 0.751 },
                { -1.0433081, 3, 0.875, 1.13, 1.24, 1.216, 0.522 },
                { -1.2459808, 2, 0.5181, 1.15, 0.46, 2.27, 0.32 },
                { -0.49712249, 2, 0.86, 1.3, 1.326, 1.26, 1.22 },
            },
        },
    };
}
