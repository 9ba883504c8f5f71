PRAGMA foreign_keys=OFF;
BEGIN TRANSACTION;
CREATE TABLE answers (
    lot         INTEGER PRIMARY KEY REFERENCES lots (id),
    revision    INTEGER NOT NULL,
    decision    TEXT    NOT NULL CONSTRAINT decision CHECK (decision IN ('bid', 'do_not_bid')),
    walk_away   INTEGER,
    binding     TEXT    NOT NULL,
    loss_chance REAL    NOT NULL,
    mean_profit REAL    NOT NULL,
    per_hour    REAL,
    noted_at    TEXT    NOT NULL
) STRICT;
INSERT INTO "answers" VALUES(1,1,'bid',630000,'max_loss_chance',0.14,2100.25,41.5,'2026-11-20T07:30:00Z');
CREATE TABLE comparables (
    lot          INTEGER NOT NULL REFERENCES lots (id),
    position     INTEGER NOT NULL,
    comparable   TEXT    NOT NULL,
    price        INTEGER NOT NULL,
    kind         TEXT    NOT NULL CONSTRAINT kind CHECK (kind IN ('', 'asked', 'sold')),
    date         TEXT    NOT NULL CONSTRAINT date CHECK (date = '' OR date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    model_year   INTEGER NOT NULL,
    make         TEXT    NOT NULL,
    model        TEXT    NOT NULL,
    trim         TEXT    NOT NULL,
    mileage      REAL,
    mileage_unit TEXT    NOT NULL CONSTRAINT mileage_unit CHECK (mileage_unit IN ('', 'mi', 'km')),
    title        TEXT    NOT NULL,
    distance_mi  REAL,
    condition    REAL,
    note         TEXT    NOT NULL,
    source       TEXT    NOT NULL,
    more         TEXT    NOT NULL CONSTRAINT more CHECK (json_valid(more)),
    excluded     INTEGER NOT NULL CONSTRAINT excluded CHECK (excluded IN (0, 1)),
    PRIMARY KEY (lot, position)
) STRICT, WITHOUT ROWID;
INSERT INTO "comparables" VALUES(1,0,'c2',1725050,'asked','2026-11-01',2020,'Orlan','Tessel','',70000.0,'km','rebuilt',NULL,NULL,'','','null',1);
CREATE TABLE findings (
    lot      INTEGER NOT NULL REFERENCES lots (id),
    position INTEGER NOT NULL,
    finding  TEXT    NOT NULL,
    answer   TEXT    NOT NULL CONSTRAINT answer CHECK (answer IN ('yes', 'no')),
    PRIMARY KEY (lot, position)
) STRICT, WITHOUT ROWID;
INSERT INTO "findings" VALUES(1,0,'rust_below','no');
INSERT INTO "findings" VALUES(1,1,'wheel_out_of_place','yes');
CREATE TABLE lots (
    id              INTEGER PRIMARY KEY AUTOINCREMENT,
    state           TEXT    NOT NULL CONSTRAINT state CHECK (state IN ('to look at', 'looked at', 'bid', 'won', 'lost', 'passed')),
    archived        INTEGER NOT NULL DEFAULT 0 CONSTRAINT archived CHECK (archived IN (0, 1)),
    removed_at      TEXT,
    saved_at        TEXT    NOT NULL,
    revision        INTEGER NOT NULL DEFAULT 0,
    format          TEXT    NOT NULL,
    currency        TEXT    NOT NULL,
    valued_on       TEXT    NOT NULL CONSTRAINT valued_on CHECK (valued_on = '' OR valued_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    number          TEXT    NOT NULL,
    sale            TEXT    NOT NULL,
    sale_date       TEXT    NOT NULL CONSTRAINT sale_date CHECK (sale_date = '' OR sale_date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    vin             TEXT    NOT NULL,
    model_year      INTEGER NOT NULL,
    make            TEXT    NOT NULL,
    model           TEXT    NOT NULL,
    trim            TEXT    NOT NULL,
    odometer        INTEGER,
    odometer_unit   TEXT    NOT NULL CONSTRAINT odometer_unit CHECK (odometer_unit IN ('', 'mi', 'km')),
    odometer_status TEXT    NOT NULL CONSTRAINT odometer_status CHECK (odometer_status IN ('', 'actual', 'not_actual', 'exceeds_limits', 'exempt', 'unknown')),
    title_issued_in TEXT    NOT NULL,
    title_document  TEXT    NOT NULL,
    title_brands    TEXT    NOT NULL CONSTRAINT title_brands CHECK (json_valid(title_brands)),
    register_in     TEXT    NOT NULL,
    loss            TEXT    NOT NULL CONSTRAINT loss CHECK (json_valid(loss)),
    condition       TEXT    NOT NULL CONSTRAINT condition CHECK (condition IN ('', 'drives', 'starts', 'turns_over', 'dead', 'unknown')),
    keys            INTEGER CONSTRAINT keys CHECK (keys IN (0, 1)),
    airbags         TEXT    NOT NULL CONSTRAINT airbags CHECK (json_valid(airbags))
) STRICT;
INSERT INTO "lots" VALUES(1,'bid',0,NULL,'2026-11-20T07:30:00Z',1,'walkline-case/1','USD','2026-11-20','14','Harrow Flats yard','2026-11-28','',2019,'Orlan','Tessel','GT',61200,'mi','actual','US-XX','salvage','null','US-XX','["collision"]','starts',1,'["front"]');
CREATE TABLE predictions (
    id         INTEGER PRIMARY KEY AUTOINCREMENT,
    lot        INTEGER NOT NULL REFERENCES lots (id),
    frozen_at  TEXT    NOT NULL,
    case_file  TEXT    NOT NULL CONSTRAINT case_file CHECK (json_valid(case_file)),
    answer     TEXT    NOT NULL CONSTRAINT answer CHECK (json_valid(answer)),
    factors    TEXT    NOT NULL CONSTRAINT factors CHECK (json_valid(factors)),
    seed       INTEGER NOT NULL,
    engine     TEXT    NOT NULL
) STRICT;
INSERT INTO "predictions" VALUES(1,1,'2026-11-20T07:30:00Z','{
  "format": "walkline-case/1",
  "currency": "USD",
  "valued_on": "2026-11-20",
  "lot": {
    "number": "14",
    "sale": "Harrow Flats yard",
    "sale_date": "2026-11-28",
    "model_year": 2019,
    "make": "Orlan",
    "model": "Tessel",
    "trim": "LX",
    "odometer": 61200,
    "odometer_unit": "mi",
    "odometer_status": "actual",
    "title": {
      "issued_in": "US-XX",
      "document": "salvage",
      "register_in": "US-XX"
    },
    "loss": [
      "collision"
    ],
    "condition": "starts",
    "keys": true,
    "airbags_deployed": [
      "front"
    ]
  },
  "damage": [
    {
      "area": "12",
      "extent": "functional",
      "depth": "bolted",
      "note": "bumper, \"hood\""
    },
    {
      "area": "undercarriage",
      "extent": "minor",
      "depth": "structure"
    }
  ],
  "findings": {
    "rust_below": "no",
    "wheel_out_of_place": "yes"
  },
  "repair": {
    "use_catalogue": false,
    "lines": [
      {
        "id": "r1",
        "job": "Replace bumper cover",
        "area": "12",
        "operation": "replace",
        "chance": 0.9,
        "hours": {
          "body": {
            "low": 1,
            "likely": 1.5,
            "high": 3
          }
        },
        "materials": {
          "low": 20.00,
          "likely": 30.00,
          "high": 60.00
        },
        "outside": 0.00,
        "parts": [
          {
            "name": "bumper cover",
            "critical": true,
            "options": [
              {
                "source": "used",
                "price": {
                  "low": 120.00,
                  "likely": 180.00,
                  "high": 260.00
                },
                "freight": 40.00,
                "lead_days": {
                  "low": 1,
                  "likely": 3,
                  "high": 10
                },
                "chance": 0.7,
                "extra_hours": 0,
                "core_back": 0.00
              }
            ],
            "fallback": {
              "price": 600.00,
              "lead_days": 21,
              "hours": 0
            }
          }
        ],
        "edited": false,
        "removed": false
      }
    ]
  },
  "hidden": {
    "use_catalogue": false,
    "risks": [
      {
        "id": "h1",
        "name": "Control arm mount torn",
        "chance": {
          "a": 2,
          "b": 6
        },
        "cost": {
          "low": 150.00,
          "likely": 300.00,
          "high": 900.00
        },
        "hours": {
          "structure": {
            "low": 1,
            "likely": 3,
            "high": 8
          }
        },
        "days": 2,
        "loading": 0.25,
        "removed": false
      }
    ],
    "shared_loading": 0
  },
  "resale": {
    "rows": [
      {
        "id": "c1",
        "price": "16500.00",
        "kind": "sold",
        "date": "2026-10-02",
        "model_year": 2019,
        "make": "Orlan",
        "model": "Tessel",
        "trim": "LX",
        "mileage": 58000,
        "mileage_unit": "mi",
        "title": "clear",
        "distance": 12.5,
        "condition": 4,
        "note": "one owner",
        "source": "yard list",
        "more": {
          "fuel": "petrol"
        },
        "excluded": false
      },
      {
        "id": "c2",
        "price": "17250.50",
        "kind": "asked",
        "date": "2026-11-01",
        "model_year": 2020,
        "make": "Orlan",
        "model": "Tessel",
        "mileage": 70000,
        "mileage_unit": "km",
        "title": "rebuilt",
        "excluded": true
      }
    ],
    "subject": {
      "trim": "LX",
      "condition": 3,
      "brand": "rebuilt"
    },
    "brand_discount": {
      "low": 0.15,
      "likely": 0.28,
      "high": 0.45
    },
    "asked_to_sold": {
      "low": 0.9,
      "likely": 0.95,
      "high": 1
    },
    "guess": {
      "low": 14000.00,
      "likely": 16500.00,
      "high": 18500.00
    }
  },
  "buying": {
    "bid_steps": [
      {
        "from": "0.00",
        "step": "25.00"
      },
      {
        "from": "1000.00",
        "step": "50.00"
      }
    ],
    "fees": [
      {
        "name": "Buyer''s fee",
        "mode": "whole",
        "rows": [
          {
            "from": "0.00",
            "flat": "100.00",
            "percent": 0
          },
          {
            "from": "1000.00",
            "flat": "150.00",
            "percent": 0.02
          },
          {
            "from": "5000.00",
            "flat": "0.00",
            "percent": 0.08,
            "minimum": "400.00"
          }
        ]
      }
    ],
    "fixed": [
      {
        "name": "Gate",
        "amount": "75.00"
      }
    ],
    "payment_surcharge": 0.025,
    "tax": {
      "rate": 0.0625,
      "base": "hammer_and_fees"
    },
    "freight": {
      "low": 150.00,
      "likely": 180.00,
      "high": 240.00
    },
    "storage": {
      "per_day": 30.00,
      "free_days": 3,
      "days": {
        "low": 2,
        "likely": 3,
        "high": 6
      }
    }
  },
  "time": {
    "hours_per_week": 30,
    "inspection_queue_days": {
      "low": 7,
      "likely": 14,
      "high": 35
    },
    "days_to_sell": {
      "low": 7,
      "likely": 21,
      "high": 60
    },
    "holding_per_day": 6.00,
    "capital_rate": 0.1
  },
  "selling": {
    "percent": 0,
    "flat": 250.00
  },
  "labour": {
    "rates": {
      "body": 35.00,
      "electrical": 35.00,
      "mechanical": 35.00,
      "paint": 35.00,
      "structure": 35.00,
      "trim": 35.00
    }
  },
  "market": {
    "rivals": 4,
    "hammer_guess": {
      "low": 3500.00,
      "likely": 5200.00,
      "high": 7500.00
    }
  },
  "rules": {
    "min_profit": "1500.00",
    "min_margin": 0.12,
    "max_loss_chance": 0.15,
    "max_worst_tenth_loss": "2500.00",
    "min_per_hour": "40.00",
    "max_cash": "20000.00",
    "max_days": 150
  },
  "run": {
    "scenarios": 4096,
    "seed": 7,
    "winners_allowance": false
  }
}
','{
  "format": "walkline-answer/1",
  "currency": "USD",
  "decision": "bid",
  "walk_away": "6300.00",
  "binding_rule": "max_loss_chance",
  "reasons": [],
  "warnings": [],
  "ceilings": {},
  "resale": {
    "mean": 0,
    "p10": 0,
    "p50": 0,
    "p90": 0,
    "rows_used": 0,
    "adjusted": []
  },
  "repair": {
    "mean": 0,
    "p10": 0,
    "p90": 0,
    "lines": []
  },
  "hidden": {
    "mean": 0,
    "p10": 0,
    "p90": 0,
    "risks": []
  },
  "days": {
    "mean": 0,
    "p10": 0,
    "p90": 0
  },
  "hours": {
    "mean": 0,
    "p10": 0,
    "p90": 0
  },
  "acquisition": {
    "bid": "0.00",
    "lines": [],
    "total": "0.00"
  },
  "profit": {
    "mean": 2100.25,
    "p05": 0,
    "p10": 0,
    "p50": 0,
    "p90": 0,
    "loss_chance": 0.14,
    "worst_tenth_mean": 0,
    "margin": 0,
    "per_hour": 41.5
  },
  "ladder": [],
  "waterfall": [],
  "drivers": [],
  "checklist": [],
  "own_labour": {
    "mean": 0,
    "p10": 0,
    "p90": 0
  }
}
','{}',7,'1');
CREATE TABLE repair_lines (
    lot              INTEGER NOT NULL REFERENCES lots (id),
    position         INTEGER NOT NULL,
    line             TEXT    NOT NULL,
    job              TEXT    NOT NULL,
    area             TEXT    NOT NULL,
    operation        TEXT    NOT NULL,
    chance           REAL,
    hours            TEXT    NOT NULL CONSTRAINT hours CHECK (json_valid(hours)),
    materials_low    REAL    NOT NULL,
    materials_likely REAL    NOT NULL,
    materials_high   REAL    NOT NULL,
    outside_low      REAL    NOT NULL,
    outside_likely   REAL    NOT NULL,
    outside_high     REAL    NOT NULL,
    parts            TEXT    NOT NULL CONSTRAINT parts CHECK (json_valid(parts)),
    loading          REAL,
    why              TEXT    NOT NULL,
    caution          TEXT    NOT NULL,
    edited           INTEGER NOT NULL CONSTRAINT edited CHECK (edited IN (0, 1)),
    removed          INTEGER NOT NULL CONSTRAINT removed CHECK (removed IN (0, 1)),
    PRIMARY KEY (lot, position)
) STRICT, WITHOUT ROWID;
INSERT INTO "repair_lines" VALUES(1,0,'r1','Replace bumper cover','12','replace',0.9,'{"body":{"low":1,"likely":1.5,"high":3}}',20.0,30.0,60.0,0.0,0.0,0.0,'[{"name":"bumper cover","critical":true,"options":[{"source":"used","price":{"low":120,"likely":180,"high":260},"freight":{"low":40,"likely":40,"high":40},"lead_days":{"low":1,"likely":3,"high":10},"chance":0.7,"extra_hours":{"low":0,"likely":0,"high":0},"core_back":{"low":0,"likely":0,"high":0},"quoted":""}],"fallback":{"price":{"low":600,"likely":600,"high":600},"lead_days":{"low":21,"likely":21,"high":21},"hours":{"low":0,"likely":0,"high":0}}}]',NULL,'','',0,0);
CREATE TABLE risks (
    lot         INTEGER NOT NULL REFERENCES lots (id),
    position    INTEGER NOT NULL,
    risk        TEXT    NOT NULL,
    name        TEXT    NOT NULL,
    present     REAL    NOT NULL,
    absent      REAL    NOT NULL,
    cost_low    REAL    NOT NULL,
    cost_likely REAL    NOT NULL,
    cost_high   REAL    NOT NULL,
    hours       TEXT    NOT NULL CONSTRAINT hours CHECK (json_valid(hours)),
    days_low    REAL    NOT NULL,
    days_likely REAL    NOT NULL,
    days_high   REAL    NOT NULL,
    loading     REAL,
    evidence    TEXT    NOT NULL CONSTRAINT evidence CHECK (json_valid(evidence)),
    why         TEXT    NOT NULL,
    caution     TEXT    NOT NULL,
    removed     INTEGER NOT NULL CONSTRAINT removed CHECK (removed IN (0, 1)),
    PRIMARY KEY (lot, position)
) STRICT, WITHOUT ROWID;
INSERT INTO "risks" VALUES(1,0,'h1','Control arm mount torn',2.0,6.0,150.0,300.0,900.0,'{"structure":{"low":1,"likely":3,"high":8}}',2.0,2.0,2.0,0.25,'null','','',0);
CREATE TABLE settings (
    name     TEXT PRIMARY KEY,
    value    TEXT NOT NULL CONSTRAINT value CHECK (json_valid(value)),
    saved_at TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO "settings" VALUES('theme','"light"','2026-11-20T07:30:00Z');
CREATE TABLE shop_steps (
    number  INTEGER PRIMARY KEY AUTOINCREMENT,
    place   TEXT    NOT NULL CONSTRAINT place CHECK (place IN ('board', 'bench')),
    label   TEXT    NOT NULL,
    change  TEXT    NOT NULL CONSTRAINT change CHECK (json_valid(change)),
    undone  INTEGER NOT NULL DEFAULT 0 CONSTRAINT undone CHECK (undone IN (0, 1)),
    made_at TEXT    NOT NULL
) STRICT;
INSERT INTO "shop_steps" VALUES(1,'board','mark lot 14 as looked at','{"lots":[{"lot":1,"before":{"state":"bid","archived":false,"removed":""},"after":{"state":"looked at","archived":false,"removed":""}}],"settings":null,"edits":null}',0,'2026-11-25T13:43:25.598004803Z');
INSERT INTO "shop_steps" VALUES(2,'board','mark lot 14 as bid','{"lots":[{"lot":1,"before":{"state":"looked at","archived":false,"removed":""},"after":{"state":"bid","archived":false,"removed":""}}],"settings":null,"edits":null}',0,'2026-11-25T13:43:25.598609534Z');
CREATE TABLE steps (
    lot     INTEGER NOT NULL REFERENCES lots (id),
    number  INTEGER NOT NULL,
    label   TEXT    NOT NULL,
    change  TEXT    NOT NULL CONSTRAINT change CHECK (json_valid(change)),
    undone  INTEGER NOT NULL DEFAULT 0 CONSTRAINT undone CHECK (undone IN (0, 1)),
    made_at TEXT    NOT NULL,
    PRIMARY KEY (lot, number)
) STRICT;
INSERT INTO "steps" VALUES(1,1,'Trim','{"documents":{"lot":{"before":{"number":"14","sale":"Harrow Flats yard","sale_date":"2026-11-28","vin":"","model_year":2019,"make":"Orlan","model":"Tessel","trim":"LX","odometer":61200,"odometer_unit":"mi","odometer_status":"actual","title":{"issued_in":"US-XX","document":"salvage","brands":null,"register_in":"US-XX"},"loss":["collision"],"condition":"starts","keys":true,"airbags_deployed":["front"]},"after":{"number":"14","sale":"Harrow Flats yard","sale_date":"2026-11-28","vin":"","model_year":2019,"make":"Orlan","model":"Tessel","trim":"GT","odometer":61200,"odometer_unit":"mi","odometer_status":"actual","title":{"issued_in":"US-XX","document":"salvage","brands":null,"register_in":"US-XX"},"loss":["collision"],"condition":"starts","keys":true,"airbags_deployed":["front"]}}},"damage":{"at":2,"out":[],"in":[]},"findings":{"at":2,"out":[],"in":[]},"lines":{"at":1,"out":[],"in":[]},"risks":{"at":1,"out":[],"in":[]},"rows":{"at":0,"out":[{"id":"c1","price":1650000,"kind":"sold","date":"2026-10-02","model_year":2019,"make":"Orlan","model":"Tessel","trim":"LX","mileage":58000,"mileage_unit":"mi","title":"clear","distance":12.5,"condition":4,"note":"one owner","source":"yard list","more":{"fuel":"petrol"},"excluded":false}],"in":[]}}',0,'2026-11-20T07:30:00Z');
CREATE TABLE surveys (
    lot      INTEGER NOT NULL REFERENCES lots (id),
    position INTEGER NOT NULL,
    area     TEXT    NOT NULL CONSTRAINT area CHECK (area IN ('', '01', '02', '03', '04', '05', '06', '07', '08', '09', '10', '11', '12', 'top', 'undercarriage', 'interior', 'engine_bay', 'electrical', 'battery_pack', 'water')),
    extent   TEXT    NOT NULL CONSTRAINT extent CHECK (extent IN ('', 'minor', 'functional', 'disabling')),
    depth    TEXT    NOT NULL CONSTRAINT depth CHECK (depth IN ('', 'skin', 'bolted', 'structure')),
    note     TEXT    NOT NULL,
    PRIMARY KEY (lot, position)
) STRICT, WITHOUT ROWID;
INSERT INTO "surveys" VALUES(1,0,'12','functional','bolted','bumper, "hood"');
INSERT INTO "surveys" VALUES(1,1,'undercarriage','minor','structure','');
CREATE TABLE terms (
    lot  INTEGER NOT NULL REFERENCES lots (id),
    part TEXT    NOT NULL CONSTRAINT part CHECK (part IN ('damage', 'findings', 'repair', 'hidden', 'resale', 'buying', 'time', 'selling', 'labour', 'market', 'rules', 'run')),
    body TEXT    NOT NULL CONSTRAINT body CHECK (json_valid(body)),
    PRIMARY KEY (lot, part)
) STRICT, WITHOUT ROWID;
INSERT INTO "terms" VALUES(1,'buying','{"bid_steps":[{"from":0,"step":2500},{"from":100000,"step":5000}],"fees":[{"name":"Buyer''s fee","mode":"whole","rows":[{"from":0,"flat":10000,"percent":"0","minimum":null,"maximum":null},{"from":100000,"flat":15000,"percent":"0.02","minimum":null,"maximum":null},{"from":500000,"flat":0,"percent":"0.08","minimum":40000,"maximum":null}]}],"fixed":[{"name":"Gate","amount":7500}],"payment_surcharge":"0.025","tax":{"rate":"0.0625","base":"hammer_and_fees"},"freight":{"low":150,"likely":180,"high":240},"storage":{"per_day":30,"free_days":3,"days":{"low":2,"likely":3,"high":6}}}');
INSERT INTO "terms" VALUES(1,'damage','[]');
INSERT INTO "terms" VALUES(1,'findings','{}');
INSERT INTO "terms" VALUES(1,'hidden','{"use_catalogue":false,"risks":[],"shared_loading":0}');
INSERT INTO "terms" VALUES(1,'labour','{"rates":{"body":35,"electrical":35,"mechanical":35,"paint":35,"structure":35,"trim":35}}');
INSERT INTO "terms" VALUES(1,'market','{"rivals":4,"hammer_guess":{"low":3500,"likely":5200,"high":7500}}');
INSERT INTO "terms" VALUES(1,'repair','{"use_catalogue":false,"lines":[]}');
INSERT INTO "terms" VALUES(1,'resale','{"comparables":"","rows":[],"subject":{"trim":"LX","condition":3,"brand":"rebuilt","sale_date":"","more":null},"brand_discount":{"low":0.15,"likely":0.28,"high":0.45},"asked_to_sold":{"low":0.9,"likely":0.95,"high":1},"guess":{"low":14000,"likely":16500,"high":18500}}');
INSERT INTO "terms" VALUES(1,'rules','{"min_profit":150000,"min_margin":0.12,"max_loss_chance":0.15,"max_worst_tenth_loss":250000,"min_per_hour":4000,"max_cash":2000000,"max_days":150}');
INSERT INTO "terms" VALUES(1,'run','{"scenarios":4096,"seed":7,"winners_allowance":false}');
INSERT INTO "terms" VALUES(1,'selling','{"percent":0,"flat":250}');
INSERT INTO "terms" VALUES(1,'time','{"hours_per_week":30,"inspection_queue_days":{"low":7,"likely":14,"high":35},"days_to_sell":{"low":7,"likely":21,"high":60},"holding_per_day":6,"capital_rate":0.1}');
CREATE INDEX predictions_of_lot ON predictions (lot, id);
CREATE TRIGGER predictions_never_change BEFORE UPDATE ON predictions
BEGIN
    SELECT RAISE(ABORT, 'a frozen prediction never changes');
END;
CREATE TRIGGER predictions_never_go BEFORE DELETE ON predictions
BEGIN
    SELECT RAISE(ABORT, 'a frozen prediction is never deleted');
END;
CREATE INDEX shop_steps_of_place ON shop_steps (place, number);
DELETE FROM "sqlite_sequence";
INSERT INTO "sqlite_sequence" VALUES('lots',1);
INSERT INTO "sqlite_sequence" VALUES('predictions',1);
INSERT INTO "sqlite_sequence" VALUES('shop_steps',2);
COMMIT;
