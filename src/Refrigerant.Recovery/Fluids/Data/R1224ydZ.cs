using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-1224yd(Z), (Z)-1-chloro-2,3,3,3-tetrafluoropropene. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R1224ydZ
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-1224yd(Z)",
        Name = "(Z)-1-chloro-2,3,3,3-tetrafluoropropene",
        CasNumber = "111512-60-8",
        Source = "Ryo Akasaka and Eric W. Lemmon, (2023), A Helmholtz Energy Equation of State for "
            + "cis-1-Chloro-2,3,3,3-tetrafluoro-1-propene [R-1224yd(Z)], International Journal of Thermophysics, "
            + "vol. 44, doi:10.1007/s10765-023-03266-3",
        MolarMass = 0.14848670000000003,
        GasConstant = 8.314462618,
        ReducingTemperature = 428.69,
        ReducingMolarDensity = 3632,
        CriticalTemperature = 428.69,
        CriticalPressure = 3334000,
        CriticalMolarDensity = 3632,
        AcentricFactor = 0.325,
        MinimumTemperature = 157.8,
        MaximumTemperature = 473.15,
        MaximumPressure = 35200000,
        IdealGas = new IdealHelmholtz(
            logTau: 3,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 9.057, 1.1920035456856937 },
                { 11.91, 3.324080337773216 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 0.05515868, 4, 1, 0 },
                { 1.9416962, 1, 0.226, 0 },
                { -2.2385064629867, 1, 0.661, 0 },
                { -0.8414463720438, 2, 1.128, 0 },
                { 0.22459576, 3, 0.51, 0 },
                { -1.6513724, 1, 1.98, 2 },
                { -0.022916841, 1, 8.5, 3 },
                { -1.588437, 3, 2.27, 2 },
                { 0.56220803, 2, 0.89, 1 },
                { -0.67885338, 2, 2.78, 2 },
                { -0.027421084, 7, 1, 1 },
                { -0.021429988, 2, 6.36, 3 },
            },
            Gaussian = new double[,]
            {
                { 0.26924542, 2, 4.5, 23.96, 1028, 1.06, 0.9578 },
                { -0.33022951, 2, 2.84, 23.81, 1014, 1.062, 0.9577 },
                { 2.2799188, 1, 1.15, 1.327, 1.23, 1.296, 0.8713 },
                { -0.42644754, 1, 1.25, 1.941, 1.146, 1.245, 1.183 },
                { -0.38611218, 1, 2.32, 1.516, 0.803, 1, 1.25 },
                { 0.13232403, 1, 3.5, 1.7, 0.83, 1.45, 1.19 },
                { -0.33124629, 1, 1.06, 2.23, 1.21, 1.215, 0.842 },
            },
        },
    };
}
