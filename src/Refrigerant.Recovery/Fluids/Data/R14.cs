using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-14, tetrafluoromethane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R14
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-14",
        Name = "tetrafluoromethane",
        CasNumber = "75-73-0",
        Source = "B. Platzer and A. Polt and G. Maurer, (1990), Thermophysical Properties of Refrigerants, "
            + "Springer-Verlag, doi:10.1007/978-3-662-02608-3",
        MolarMass = 0.0880046,
        GasConstant = 8.31451,
        ReducingTemperature = 227.51,
        ReducingMolarDensity = 7109.4194,
        CriticalTemperature = 227.51,
        CriticalPressure = 3750000,
        CriticalMolarDensity = 7109.419400000001,
        AcentricFactor = 0.1785,
        MinimumTemperature = 89.54,
        MaximumTemperature = 623,
        MaximumPressure = 51000000,
        IdealGas = new IdealHelmholtz(
            logTau: 2.946282613411975,
            tauLogTau: 0,
            powers: new double[,]
            {
                { 1.007656513455641, -1 },
                { -1.2024698876852022, -2 },
                { 0.29493597740529637, -3 },
                { -0.027465276576077606, -4 },
            },
            planckEinstein: new double[0, 2]),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 1.03999039734947, 1, 0, 0 },
                { -2.4579202542559, 1, 1, 0 },
                { 0.799614558381524, 1, 2, 0 },
                { -0.749498955282594, 1, 3, 0 },
                { 0.152177772596398, 1, 4, 0 },
                { -0.293408332036298, 2, 0, 0 },
                { 0.717794503774445, 2, 1, 0 },
                { -0.0426467444751902, 2, 2, 0 },
                { 0.226562749725952, 3, 0, 0 },
                { -0.39109169477402, 3, 1, 0 },
                { -0.0257394805543082, 4, 0, 0 },
                { 0.0554844886106659, 4, 1, 0 },
                { 0.00610988262947185, 5, 1, 0 },
                { -0.33469874882651, 0, 3, 0 },
                { 0.586690904512625, 0, 4, 0 },
                { -0.147068929694523, 0, 5, 0 },
            },
            Exponential = new double[,]
            {
                { -0.190315426348019, 2, 3, 0.99832625, 2 },
                { 0.716157134745809, 2, 4, 0.99832625, 2 },
                { -0.703161905301754, 2, 5, 0.99832625, 2 },
                { 0.33469874882651, 0, 3, 0.99832625, 2 },
                { -0.586690904512625, 0, 4, 0.99832625, 2 },
                { 0.147068929694523, 0, 5, 0.99832625, 2 },
            },
        },
        SaturationViscosity = new double[,]
        {
            { 201, 9.6164E-05, 1.391E-05 },
            { 202.79, 9.3276E-05, 1.4183E-05 },
            { 204.58, 9.0395E-05, 1.4473E-05 },
            { 206.37, 8.7514E-05, 1.4784E-05 },
            { 208.16, 8.462E-05, 1.5119E-05 },
            { 209.95, 8.1703E-05, 1.5484E-05 },
            { 211.74, 7.8745E-05, 1.5883E-05 },
            { 213.53, 7.5728E-05, 1.6327E-05 },
            { 215.32, 7.2626E-05, 1.6825E-05 },
            { 217.11, 6.9405E-05, 1.7395E-05 },
            { 218.9, 6.6012E-05, 1.8064E-05 },
            { 220.68, 6.2386E-05, 1.8871E-05 },
        },
    };
}
